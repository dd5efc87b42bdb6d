import { DIMENSIONS, type DimensionEntry } from './dimensions.ts';
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

const EXAMPLES: Readonly<Record<BareKind, string>> = {
  ratio: '1.65 or 1.65:1',
  turns: '3 turns 42 or 1 1/2 turns',
  count: '16',
};

/** How a number of this kind can be written. */
export function exampleOf(kind: NumberKind): string {
  if (isBare(kind)) return EXAMPLES[kind];
  const { example }: DimensionEntry = DIMENSIONS[kind];
  return example ?? `12.5 ${unitsOf(kind)[0]}`;
}
