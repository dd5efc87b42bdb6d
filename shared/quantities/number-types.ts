import type { Dimension, Quantity, Unit } from './units.ts';

export type NumberKind = Dimension | 'ratio' | 'turns' | 'count';

export type NumberFaultCode =
  | 'not-a-number'
  | 'unknown-unit'
  | 'wrong-dimension'
  | 'required'
  | 'not-allowed'
  | 'out-of-range';

/** One of several things that a text can mean, with the question that settles it. */
export interface Ambiguity {
  readonly readAs: string;
  readonly quantity: Quantity | { readonly value: number };
  readonly question: string;
}

export interface NumberRead {
  readonly ok: true;
  readonly value: number;
  /** The unit as entered; absent for a ratio, turns and a count. */
  readonly unit?: Unit;
  /** What was understood, as a person would write it. */
  readonly readAs: string;
  /** Kind `turns`: whole turns plus the part of a turn. */
  readonly turns?: number;
  /** Kind `turns` with the travel per turn known: the whole reading as a length. */
  readonly length?: Quantity;
  /** Kind `turns` with the travel per turn known: how far the hand stands past the last whole turn. */
  readonly needle?: Quantity;
}

interface NumberAsked {
  readonly ok: false;
  readonly ambiguities: readonly Ambiguity[];
  readonly fault?: undefined;
}

export interface NumberRefused {
  readonly ok: false;
  readonly ambiguities: readonly [];
  readonly fault: { readonly code: NumberFaultCode; readonly detail: string };
}

export type NumberReading = NumberRead | NumberAsked | NumberRefused;

export interface ReadOptions {
  readonly kind: NumberKind;
  /** The unit of a number that comes without one. */
  readonly assume?: Unit;
  /** Travel of the dial per turn of its big hand. */
  readonly perTurn?: Quantity;
}

/** One meaning of the text before it is decided whether it is the only one. */
export interface Meaning {
  readonly value: number;
  readonly unit?: Unit;
  readonly readAs: string;
  readonly question?: string;
}

export function refuse(code: NumberFaultCode, detail: string): NumberRefused {
  return { ok: false, ambiguities: [], fault: { code, detail } };
}
