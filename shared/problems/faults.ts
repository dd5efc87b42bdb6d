/** The codes a faulty input can have; the list that API clients program against. */
export const FAULT_CODES = [
  'required',
  'wrong-dimension',
  'unknown-unit',
  'not-a-number',
  'out-of-range',
  'not-allowed',
  'unknown-field',
  'too-many',
  'impossible-input',
] as const;

export type FaultCode = (typeof FAULT_CODES)[number];

/** One of several things that an entry can mean, with the question that settles it. */
export interface PossibleReading {
  readonly readAs: string;
  readonly quantity: { readonly value: number; readonly unit: string };
  readonly question: string;
}

/** One fault of an input: where (JSON pointer), which code, a sentence, and what came. */
export interface InputFault {
  readonly pointer: string;
  readonly code: FaultCode;
  readonly detail: string;
  readonly received?: unknown;
  /** What it can be read as there: send the one that was meant as value and unit, with what was typed. */
  readonly ambiguities?: readonly PossibleReading[];
}

/** Thrown by an operation whose input can't be taken; carries every fault found. */
export class InputFaults extends Error {
  readonly faults: readonly InputFault[];
  constructor(faults: readonly InputFault[]) {
    super(faults.map((fault) => `${fault.pointer}: ${fault.detail}`).join('; '));
    this.name = 'InputFaults';
    this.faults = faults;
  }
}

/** Throws `impossible-input` for the named fields (camelCase names or full pointers). */
export function impossible(fields: readonly string[], detail: string): never {
  throw new InputFaults(
    fields.map((field) => ({
      pointer: field.startsWith('/') ? field : `/${field}`,
      code: 'impossible-input',
      detail,
    })),
  );
}
