import type { NumberKind } from './number-types.ts';
import { unitsOf } from './units.ts';

export type BareKind = 'ratio' | 'turns' | 'count';

export function isBare(kind: NumberKind): kind is BareKind {
  return kind === 'ratio' || kind === 'turns' || kind === 'count';
}

/** `temperature rise` */
export function kindName(kind: NumberKind): string {
  return kind.replace('-', ' ');
}

/** The units of a kind as a sentence lists them. */
export function allowedUnits(kind: NumberKind): string {
  return isBare(kind) ? 'no unit' : unitsOf(kind).join(', ');
}

const EXAMPLES: Partial<Record<NumberKind, string>> = {
  length: '.482 in, 482 thou, 12.24 mm or 7/16 in',
  ratio: '1.65 or 1.65:1',
  turns: '3 turns 42 or 1 1/2 turns',
  count: '16',
  expansion: '11.7e-6 1/K',
};

/** How a number of this kind can be written. */
export function exampleOf(kind: NumberKind): string {
  return EXAMPLES[kind] ?? `12.5 ${isBare(kind) ? '' : unitsOf(kind)[0]}`;
}
