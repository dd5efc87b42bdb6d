import { z } from 'zod';
import { defined } from '../../shared/defined.ts';
import { FAULT_CODES, type FaultCode, type InputFault } from '../../shared/problems/faults.ts';
import { pointerOf, valueAt } from '../../shared/problems/pointer.ts';

type Issue = z.core.$ZodIssue;

function isFaultCode(code: unknown): code is FaultCode {
  return FAULT_CODES.some((each) => each === code);
}

function codeOf(issue: Issue, received: unknown): FaultCode {
  if (issue.code === 'custom') return isFaultCode(issue.params?.fault) ? issue.params.fault : 'not-allowed';
  if (received === undefined) return 'required';
  switch (issue.code) {
    case 'unrecognized_keys':
      return 'unknown-field';
    case 'too_big':
      return issue.origin === 'array' ? 'too-many' : 'out-of-range';
    case 'too_small':
      return issue.origin === 'array' || issue.origin === 'string' ? 'required' : 'out-of-range';
    case 'invalid_type':
      return issue.expected === 'number' || issue.expected === 'int' ? 'not-a-number' : 'not-allowed';
    default:
      return 'not-allowed';
  }
}

function missingDetail(issue: Issue): string {
  if (issue.code !== 'too_small' || issue.origin !== 'array') return 'is missing';
  const count = Array.isArray(issue.input) ? issue.input.length : 0;
  return `has ${count} items; ${issue.minimum} at the least`;
}

function detailOf(issue: Issue, code: FaultCode): string {
  if (issue.code === 'custom') return issue.message;
  if (code === 'required') return missingDetail(issue);
  if (issue.code === 'invalid_value') return `must be one of ${issue.values.map(String).join(', ')}`;
  if (issue.code === 'too_big')
    return `must be ${issue.maximum}${issue.origin === 'string' ? ' characters' : ''} or fewer`;
  if (issue.code === 'too_small') return `must be ${issue.minimum} or more`;
  if (issue.code === 'invalid_type') return `must be of type ${issue.expected}`;
  return issue.message;
}

/** What `received` echoes: small values as they came, large ones by their size, so that an error stays short. */
function echo(received: unknown): unknown {
  if (typeof received === 'string' && received.length > 200) return `${received.slice(0, 200)}…`;
  if (Array.isArray(received) && received.length > 20) return `a list of ${received.length} items`;
  if (typeof received === 'number' && !Number.isFinite(received)) return String(received);
  if (typeof received === 'object' && received !== null) {
    const text = JSON.stringify(received);
    return text.length > 1000 ? `${text.slice(0, 200)}…` : received;
  }
  return received;
}

export function withReceived(fault: InputFault, body: unknown): InputFault {
  const received = fault.received ?? echo(valueAt(body, fault.pointer));
  return received === undefined ? fault : { ...fault, received };
}

function flatten(issue: Issue): Issue[] {
  if (issue.code !== 'invalid_union') return [issue];
  // Of the alternatives the one that came nearest (fewest faults) speaks; the others would blame its fields.
  const branches = issue.errors.filter((branch) => branch.length > 0);
  const nearest = branches.toSorted((a, b) => a.length - b.length)[0];
  if (nearest === undefined) return [issue];
  return nearest.map((each) => ({ ...each, path: [...issue.path, ...each.path] })).flatMap(flatten);
}

/** A text in place of a list is told as such; its length, which was counted as well, says nothing of a list. */
function isCountOfNoList(issue: Issue, all: readonly Issue[]): boolean {
  if (issue.code !== 'too_small' && issue.code !== 'too_big') return false;
  const pointer = pointerOf(issue.path);
  return all.some((other) => other.code === 'invalid_type' && pointerOf(other.path) === pointer);
}

const possible = z.array(
  z.object({
    readAs: z.string(),
    quantity: z.object({ value: z.number(), unit: z.string() }),
    question: z.string(),
  }),
);

/** What an entry can be read as, where the schema asks instead of taking one. */
function ambiguitiesOf(issue: Issue): InputFault['ambiguities'] {
  return issue.code === 'custom' ? possible.safeParse(issue.params?.ambiguities).data : undefined;
}

function faultsOfIssue(issue: Issue, body: unknown): InputFault[] {
  const pointer = pointerOf(issue.path);
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({
      pointer: pointer + pointerOf([key]),
      code: 'unknown-field',
      detail: 'is not a field of this input',
    }));
  }
  const code = codeOf(issue, pointer === '' ? body : valueAt(body, pointer));
  return [
    { pointer, code, detail: detailOf(issue, code), ...defined({ ambiguities: ambiguitiesOf(issue) }) },
  ];
}

/** Every fault of a body that its schema refused, each at its own JSON pointer with what came. */
export function faultsOf(error: z.core.$ZodError, body: unknown): InputFault[] {
  return error.issues
    .flatMap(flatten)
    .filter((issue, _, all) => !isCountOfNoList(issue, all))
    .flatMap((issue) => faultsOfIssue(issue, body))
    .slice(0, 100)
    .map((fault) => withReceived(fault, body));
}
