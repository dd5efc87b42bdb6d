import { EQUAL } from '../kit/nearest.ts';
import { IN } from '../kit/si.ts';
import { medianOf } from '../statistics/median.ts';

/** A pass that stands apart from the others. */
interface PassApart {
  readonly index: number;
  /** Pass less the middle of the others [m]. */
  readonly off: number;
  /** Whole turns of the dial that would bring it back; 0 where it is off by something else. */
  readonly turns: number;
}

interface PassesApart {
  /** Passes that go together, and may be averaged. */
  readonly together: readonly number[];
  readonly apart: readonly PassApart[];
  /** Two that do not go together, with no third to say which: neither is averaged. */
  readonly undecided: boolean;
}

/** A turn is taken for missed where what is left over is within this of whole turns [m]: .008 in. */
const TURN_FITS = 0.008 * IN;

function turnsOf(off: number, perTurn: number): number {
  const turns = Math.round(-off / perTurn);
  return Math.abs(off + turns * perTurn) <= Math.min(TURN_FITS, 0.167 * perTurn) ? turns : 0;
}

/** Of none, less than any spread. */
const gapOf = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

/** The largest set of values that lie within `spread` of each other; of two as large, none. */
function largest(values: readonly number[], spread: number): readonly number[] | undefined {
  const sets = [...new Set(values)].map((least) =>
    values.flatMap((value, index) => (value >= least && value <= least + spread + EQUAL ? [index] : [])),
  );
  const most = Math.max(...sets.map((set) => set.length));
  const found = sets.filter((set) => set.length === most);
  return found.length === 1 ? found[0] : undefined;
}

/**
 * Which passes of one reading go together, and which stand apart from their fellows, by a turn of the dial or otherwise.
 *
 * Equation: together = the largest set within `spread`; turns = round(−off/perTurn) where the rest is within .008 in and
 * .167 of a turn
 *
 * @param values [m] the passes; their order says nothing
 * @param perTurn [m] travel of one turn of the big hand
 * @param spread [m] how far passes of one reading lie apart at the most
 * @returns indices that go together, those apart, and whether nobody can say which of them is apart
 *
 * Source: common practice, no published source; the .008 in as the question of a missed turn has it.
 */
export function passesApart(values: readonly number[], perTurn: number, spread: number): PassesApart {
  const all = values.map((_, index) => index);
  if (gapOf(values) <= spread + EQUAL) return { together: all, apart: [], undecided: false };
  const fellows = largest(values, spread);
  if (fellows === undefined) return { together: [], apart: [], undecided: true };
  const middle = medianOf(fellows.map((index) => values[index] ?? 0));
  const apart = all.flatMap((index) => {
    if (fellows.includes(index)) return [];
    const off = (values[index] ?? 0) - middle;
    return [{ index, off, turns: turnsOf(off, perTurn) }];
  });
  // Two that barely go together themselves speak against no third.
  const [one = 0, other = 0, ...more] = fellows.map((index) => values[index] ?? 0);
  const loose = more.length === 0 && Math.abs(one - other) > spread / 2 + EQUAL;
  if (loose && apart.some(({ turns }) => turns === 0)) return { together: [], apart: [], undecided: true };
  return { together: fellows, apart, undecided: false };
}
