import { isUtf8 } from 'node:buffer';
import { type InputFault, InputFaults } from '../../shared/problems/faults.ts';
import { pointerOf } from '../../shared/problems/pointer.ts';
import { isStorable } from '../../shared/schemas/texts.ts';
import { withReceived } from '../compute/faults-of.ts';
import { Failure } from '../problems/failure.ts';

/** Deeper than any input of ours; a body nested thousands deep must not exhaust the stack. */
const DEEPEST = 40;
const MOST_FAULTS = 100;

const OPEN_LIST = 0x5b;
const CLOSE_LIST = 0x5d;
const OPEN_OBJECT = 0x7b;
const CLOSE_OBJECT = 0x7d;
const QUOTE = 0x22;
const BACKSLASH = 0x5c;

function refuse(found: InputFault[], at: readonly PropertyKey[], code: InputFault['code'], detail: string) {
  if (found.length < MOST_FAULTS) found.push({ pointer: pointerOf(at), code, detail });
}

/**
 * Finds what JSON can say but no input of ours can mean: the key `__proto__`, a character that can't be
 * stored, and nesting without end.
 */
function findHostile(value: unknown, path: PropertyKey[], found: InputFault[]): void {
  if (typeof value === 'string') {
    if (!isStorable(value)) refuse(found, path, 'not-allowed', 'has a character that can’t be stored');
    return;
  }
  if (typeof value !== 'object' || value === null) return;
  if (path.length > DEEPEST) throw new Failure('invalid-json', `the body is nested deeper than ${DEEPEST}`);
  for (const [key, item] of Object.entries(value)) {
    if (key === '__proto__') {
      refuse(found, [...path, key], 'unknown-field', 'is not a field of this input');
    }
    if (!isStorable(key))
      refuse(found, path, 'not-allowed', 'has a name with a character that can’t be stored');
    path.push(key);
    findHostile(item, path, found);
    path.pop();
  }
}

/** Where a text of JSON that begins at `start` has its closing quotation mark. */
function endOfText(json: string, start: number): number {
  let at = start + 1;
  while (json.charCodeAt(at) !== QUOTE) at += json.charCodeAt(at) === BACKSLASH ? 2 : 1;
  return at;
}

/** Whether sound JSON is nested deeper than any input of ours. */
function isDeep(json: string): boolean {
  let depth = 0;
  for (let at = 0; at < json.length; at += 1) {
    const code = json.charCodeAt(at);
    if (code === QUOTE) at = endOfText(json, at);
    else if (code === CLOSE_LIST || code === CLOSE_OBJECT) depth -= 1;
    else if (code === OPEN_LIST || code === OPEN_OBJECT) {
      depth += 1;
      if (depth > DEEPEST) return true;
    }
  }
  return false;
}

/**
 * Whether a body must be walked through. In UTF-8 a character that can't be stored and a hidden `__proto__` both
 * need an escape by number, so that a text without one, as nearly all are, can be told by its letters alone.
 */
function mayBeHostile(json: string): boolean {
  return json.includes('\\u') || json.includes('__proto__') || isDeep(json);
}

/** Parses a JSON body. Bytes that are not UTF-8 would silently become another text (RFC 8259, 8.1). */
export function parseJson(bytes: Buffer): unknown {
  if (!isUtf8(bytes)) throw new Failure('invalid-json', 'the body is not UTF-8');
  const text = bytes.toString();
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    const why = error instanceof Error ? error.message.replace(/\s+/g, ' ').slice(0, 120) : 'unreadable';
    throw new Failure('invalid-json', `the body is not JSON: ${why}`);
  }
  if (!mayBeHostile(text)) return value;
  const found: InputFault[] = [];
  findHostile(value, [], found);
  if (found.length > 0) throw new InputFaults(found.map((fault) => withReceived(fault, value)));
  return value;
}
