import { isUtf8 } from 'node:buffer';
import { type InputFault, InputFaults } from '../../shared/problems/faults.ts';
import { pointerOf } from '../../shared/problems/pointer.ts';
import { isStorable } from '../../shared/schemas/texts.ts';
import { withReceived } from '../compute/faults-of.ts';
import { Failure } from '../problems/failure.ts';

/** Deeper than any input of ours; a body nested thousands deep must not exhaust the stack. */
const DEEPEST = 40;
const MOST_FAULTS = 100;

/**
 * Finds what JSON can say but no input of ours can mean: the key `__proto__`, a character that can't be
 * stored, and nesting without end.
 */
function findHostile(value: unknown, path: PropertyKey[], found: InputFault[]): void {
  const refuse = (at: readonly PropertyKey[], code: InputFault['code'], detail: string) => {
    if (found.length < MOST_FAULTS) found.push({ pointer: pointerOf(at), code, detail });
  };
  if (typeof value === 'string') {
    if (!isStorable(value)) refuse(path, 'not-allowed', 'has a character that can’t be stored');
    return;
  }
  if (typeof value !== 'object' || value === null) return;
  if (path.length > DEEPEST) throw new Failure('invalid-json', `the body is nested deeper than ${DEEPEST}`);
  for (const [key, item] of Object.entries(value)) {
    if (key === '__proto__') refuse([...path, key], 'unknown-field', 'is not a field of this input');
    if (!isStorable(key)) refuse(path, 'not-allowed', 'has a name with a character that can’t be stored');
    path.push(key);
    findHostile(item, path, found);
    path.pop();
  }
}

/** Parses a JSON body. Bytes that are not UTF-8 would silently become another text (RFC 8259, 8.1). */
export function parseJson(bytes: Buffer): unknown {
  if (!isUtf8(bytes)) throw new Failure('invalid-json', 'the body is not UTF-8');
  let value: unknown;
  try {
    value = JSON.parse(bytes.toString());
  } catch (error) {
    const why = error instanceof Error ? error.message.replace(/\s+/g, ' ').slice(0, 120) : 'unreadable';
    throw new Failure('invalid-json', `the body is not JSON: ${why}`);
  }
  const found: InputFault[] = [];
  findHostile(value, [], found);
  if (found.length > 0) throw new InputFaults(found.map((fault) => withReceived(fault, value)));
  return value;
}
