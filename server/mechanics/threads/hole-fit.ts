import table from '../../../seeds/fasteners.json' with { type: 'json' };
import { isUnit, UNITS } from '../../../shared/quantities/units.ts';
import { readDesignation } from './read-designation.ts';
import type { Thread } from './thread-table.ts';

export const HOLE_FITS = ['agrees', 'cannot-tell', 'differs'] as const;
type HoleFit = (typeof HOLE_FITS)[number];

/** How far a reading may lie under and over the nominal hole, both not negative [m]. */
interface Band {
  readonly below: number;
  readonly above: number;
}

/** A thread that a hole may have been made for, with the hole's own nominal [m]. */
interface Candidate {
  readonly thread: Thread;
  readonly nominalHole: number;
}

/** Equality within this counts as inside: no gauge tells a billionth of an inch. */
const EQUAL = 1e-9 * UNITS.in.toSi;

function toSi(value: number, unit: string): number {
  if (!isUnit(unit)) throw new Error(`seeds/fasteners.json: no unit ${unit}`);
  return value * UNITS[unit].toSi;
}

const bandOf = ({ below, above, unit }: { below: number; above: number; unit: string }): Band => ({
  below: toSi(below, unit),
  above: toSi(above, unit),
});

export const DEFAULT_READING_BAND = bandOf(table.readingBand);
const DOUBT_BAND = bandOf(table.doubtBand);

/** Every thread that rocker holes are made for, by size. */
export const CANDIDATES: readonly Candidate[] = table.holes.flatMap((hole) =>
  hole.threads.map((designation) => {
    const read = readDesignation(designation);
    if (!read.ok) throw new Error(`seeds/fasteners.json: ${designation} ${read.detail}`);
    return { thread: read.thread, nominalHole: toSi(hole.nominal, hole.unit) };
  }),
);

/** Where a reading is still in doubt: the default, and nowhere narrower than the band it agrees in. */
export function doubtBand(agreeing: Band): Band {
  return {
    below: Math.max(DOUBT_BAND.below, agreeing.below),
    above: Math.max(DOUBT_BAND.above, agreeing.above),
  };
}

const within = (offset: number, band: Band) => offset >= -band.below - EQUAL && offset <= band.above + EQUAL;

/**
 * Whether a hole that reads `offset` over its nominal was made for it.
 *
 * Equation: agrees: −below ≤ offset ≤ above; cannot-tell: the same with the doubt band; differs beyond
 *
 * @param offset [m] hole read less nominal hole
 * @param band [m] band a reading agrees in
 *
 * Validity: a single reading by inside jaws; a hole read at two places that differ by over .003 in is not round.
 * Source: common practice, no published source.
 */
export function fitOf(offset: number, band: Band): HoleFit {
  if (within(offset, band)) return 'agrees';
  return within(offset, doubtBand(band)) ? 'cannot-tell' : 'differs';
}
