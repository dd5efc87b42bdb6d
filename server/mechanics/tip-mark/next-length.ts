import { allowance, share } from '../kit/allowances.ts';
import type { Mark } from './types.ts';

/** A checking pushrod commonly goes this far per turn. */
export const STEP = allowance('checker-turn');
/** Lengths that differ by less are one length: no pushrod is made or read finer. */
export const ONE_LENGTH = allowance('one-length');
/** A line drawn through two marks is not followed further than this past a length that was tried. */
const REACH = 2 * STEP;
/** The answer is a length to try: finer than this nobody sets one. */
const FINEST = allowance('mark-told');

/**
 * Where the middle of a mark is, toward the exhaust side positive. A sideways one says nothing along the rocker, and one
 * of which only the side was told has no figure.
 */
export function alongRocker({ side, off }: Pick<Mark, 'side' | 'off'>): number | undefined {
  if (side === 'centred') return 0;
  if (side === 'sideways' || off === undefined) return undefined;
  return side === 'exhaust' ? off : -off;
}

/** A place is read no nearer than this, as a width is. */
export const PLACE_READ = allowance('mark-place-read');
/** On a stud a mark goes somewhat less than half as far as the length that carries it. */
const LENGTH_FOR_PLACE = share('length-for-place');

/** As near the middle as anybody can read. */
export const isCentred = (mark: Pick<Mark, 'side' | 'off'>): boolean => {
  const at = alongRocker(mark);
  return at !== undefined && Math.abs(at) <= PLACE_READ + ONE_LENGTH / 1000;
};

type NextLength =
  | { readonly how: 'step' | 'line'; readonly length: number; readonly change: number }
  /** Longer did not bring the mark toward the exhaust side: something else moved with it. */
  | { readonly how: 'against' };

interface Tried {
  readonly length: number;
  readonly at: number;
}

/** The newest mark of each length that was tried, the one nearest the middle first. */
function triedOf(marks: readonly Mark[]): Tried[] {
  const tried: Tried[] = [];
  for (const mark of marks.toReversed()) {
    const at = alongRocker(mark);
    const { pushrod } = mark;
    if (at === undefined || pushrod === undefined) continue;
    if (!tried.some((each) => Math.abs(each.length - pushrod) < ONE_LENGTH))
      tried.push({ length: pushrod, at });
  }
  return tried.sort((a, b) => Math.abs(a.at) - Math.abs(b.at));
}

const rounded = (length: number): number => Math.round(length / FINEST) * FINEST;

/**
 * The pushrod length to try next on a stud mount, where a longer pushrod carries the mark toward the exhaust side.
 *
 * Equation: one length tried: toward the middle by two and a half times the distance from it, .050 in at the most; two: length₁ − at₁·(length₂ − length₁)/(at₂ − at₁)
 *
 * @param marks [m] the marks of one valve in the order of entry
 * @returns length [m] and change [m] against the newest mark's own, or that length did not move the mark as it should;
 * undefined when the newest mark is centred, sideways or without a length
 *
 * Validity: rockers on studs; small changes, over which the mark moves in step with the length.
 * Source: direction by trade press (circle-track article, a maker's news item); the step by common practice; the line
 * derived here.
 */
export function nextLength(marks: readonly Mark[]): NextLength | undefined {
  const newest = marks.at(-1);
  const here = newest === undefined ? undefined : alongRocker(newest);
  const now = newest?.pushrod;
  if (here === undefined || now === undefined || Math.abs(here) < FINEST / 10) return undefined;
  const [first, second] = triedOf(marks);
  if (first === undefined || second === undefined) {
    const asked = Math.min(STEP, Math.max(FINEST, rounded(LENGTH_FOR_PLACE * Math.abs(here))));
    const change = here > 0 ? -asked : asked;
    return { how: 'step', length: now + change, change };
  }
  const slope = (second.at - first.at) / (second.length - first.length);
  if (slope <= 0) return { how: 'against' };
  const away = Math.max(-REACH, Math.min(REACH, -first.at / slope));
  const length = rounded(first.length + away);
  return { how: 'line', length, change: length - now };
}
