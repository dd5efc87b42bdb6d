import { InputFaults } from '../../shared/problems/faults.ts';
import { pointerOf } from '../../shared/problems/pointer.ts';
import { isStorable } from '../../shared/schemas/texts.ts';
import { Failure } from '../problems/failure.ts';

/** Deeper than any input of ours; a body nested thousands deep must not exhaust the stack. */
const DEEPEST = 40;

/**
 * Refuses what JSON can say but no input of ours can mean: the key `__proto__`, a character that can't be
 * stored, and nesting without end.
 */
function refuseHostile(value: unknown, path: PropertyKey[]): void {
  if (typeof value === 'string') {
    if (!isStorable(value)) {
      throw new InputFaults([
        { pointer: pointerOf(path), code: 'not-allowed', detail: 'has a character that can’t be stored' },
      ]);
    }
    return;
  }
  if (typeof value !== 'object' || value === null) return;
  if (path.length > DEEPEST) throw new Failure('invalid-json', `the body is nested deeper than ${DEEPEST}`);
  for (const [key, item] of Object.entries(value)) {
    if (key === '__proto__') {
      throw new InputFaults([
        {
          pointer: pointerOf([...path, key]),
          code: 'unknown-field',
          detail: 'is not a field of this input',
          received: item,
        },
      ]);
    }
    path.push(key);
    refuseHostile(item, path);
    path.pop();
  }
}

/** Parses a JSON body. */
export function parseJson(text: string): unknown {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    const why = error instanceof Error ? error.message.replace(/\s+/g, ' ').slice(0, 120) : 'unreadable';
    throw new Failure('invalid-json', `the body is not JSON: ${why}`);
  }
  refuseHostile(value, []);
  return value;
}
