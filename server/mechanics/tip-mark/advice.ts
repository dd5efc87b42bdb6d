import { IN } from '../kit/si.ts';
import type { Advice } from './advice-types.ts';
import { isLike, wideBy } from './called-wide.ts';
import { byWidth, change, FINEST, INK, staysAt } from './least-width.ts';
import { isCentred, nextLength, ONE_LENGTH, STEP } from './next-length.ts';
import {
  AS_NARROW,
  allMovedBack,
  type Changed,
  changedOn,
  movedBack,
  oneLeast,
  sameSettingApart,
  settingOf,
  spread,
  triedOf,
} from './tried.ts';
import type { Mark, MarkContext } from './types.ts';

/** Told from the mark that is judged: whoever has that one in front of him changes it by so much. */
function fromJudged(advice: Advice, setting: number | undefined): Advice {
  if (advice.how !== 'change' || advice.to === undefined || setting === undefined) return advice;
  const by = Math.abs(advice.to - setting);
  if (by < FINEST / 2) return { how: 'keep', at: advice.to };
  return { ...advice, by, way: advice.to > setting ? 'up' : 'down' };
}

/** A setting on the way to where the places point was inked, and made it wider than is ordinary. */
const isWiderOnTheWay = (marks: readonly Mark[], judged: Mark, to: number, limit: number): boolean => {
  const from = judged.pushrod ?? to;
  const [low, high] = [Math.min(from, to) - FINEST - ONE_LENGTH, Math.max(from, to) + FINEST + ONE_LENGTH];
  return marks.some(
    ({ pushrod, width }) =>
      pushrod !== undefined &&
      pushrod >= low &&
      pushrod <= high &&
      (pushrod - from) * (to - from) > 0 &&
      width > Math.max(limit, judged.width + AS_NARROW),
  );
};

/** A length that is on record already: nobody sets one so much finer that it would be another. */
const inkedAt = (marks: readonly Mark[], at: number): Mark | undefined =>
  marks.find(({ pushrod }) => pushrod !== undefined && Math.abs(pushrod - at) < FINEST / 2);

/**
 * A step by the place of one mark. Where that length was inked already and sits on the other side, the middle is between
 * the two; where it still sits on this side the next step goes on from there.
 */
function stepByPlace(marks: readonly Mark[], judged: Mark, by: number): Advice {
  const way = judged.side === 'valley' ? 'up' : 'down';
  const step = (from: number | undefined, far: number): Advice => ({
    how: 'change',
    ...change(from, way, far),
    found: 'step',
    from: 'place',
    placeAgainst: false,
  });
  const { pushrod } = judged;
  const there = pushrod === undefined ? undefined : inkedAt(marks, pushrod + (way === 'up' ? by : -by));
  if (pushrod === undefined || there === undefined) return step(pushrod, by);
  const onward = there.side === judged.side;
  const far = onward ? 2 * by : Math.round(by / 2 / FINEST) * FINEST;
  const to = pushrod + (way === 'up' ? far : -far);
  return far < FINEST / 2 || inkedAt(marks, to) !== undefined ? { how: 'keep' } : step(pushrod, far);
}

/** On a stud by its place: toward the valley is too short, toward the exhaust side too long. */
function byPlace(marks: readonly Mark[], limit: number): Advice {
  const judged = marks.at(-1);
  if (judged === undefined || isCentred(judged)) return { how: 'keep' };
  const next = nextLength(marks);
  if (next?.how === 'against') return { how: 'contradict', because: 'moved-back' };
  if (next === undefined || next.how === 'step')
    return stepByPlace(marks, judged, Math.abs(next?.change ?? STEP));
  const by = Math.abs(next.change);
  // A length that was inked, and made it wider, is not tried once more for its place.
  if (isWiderOnTheWay(marks, judged, next.length, limit)) return { how: 'keep', offCentre: true };
  if (by < FINEST / 2) return { how: 'keep' };
  const there = inkedAt(marks, next.length);
  // It was inked: it is the one, unless it is wider than this one by more than a width is good to.
  if (there !== undefined)
    return there.width > judged.width + INK
      ? { how: 'keep', offCentre: true }
      : { how: 'keep', at: next.length };
  return {
    how: 'change',
    way: next.change > 0 ? 'up' : 'down',
    by,
    to: next.length,
    found: 'line',
    from: 'place',
    placeAgainst: false,
  };
}

const limitOf = ({ leastSweep, overLeast }: MarkContext): number =>
  leastSweep === undefined ? Number.POSITIVE_INFINITY : leastSweep + overLeast + 1e-9 * IN;

/** Over this no setting makes it ordinary; nothing is, of a mark that can't be called wide: the rest may be the ink's own. */
function stillWideOver(all: readonly Mark[], judged: Mark, context: MarkContext): number {
  const mayBeCalled = context.ordinaryTo !== undefined;
  const called = wideBy(judged, [...all, ...context.beside], context) !== undefined;
  return called || !mayBeCalled ? limitOf(context) : Number.POSITIVE_INFINITY;
}

/** Wide at every setting that was tried: the way that is left, where one of them was that far off already. */
function eitherWay(judged: Mark, marks: readonly Mark[], changed: Changed): Advice {
  const { pushrod } = judged;
  if (changed !== 'pushrod' || pushrod === undefined) return { how: 'both-ways' };
  const isInked = (way: 1 | -1): boolean => inkedAt(marks, pushrod + way * STEP) !== undefined;
  if (isInked(1) === isInked(-1)) return { how: 'both-ways' };
  return {
    how: 'change',
    ...change(pushrod, isInked(1) ? 'down' : 'up', STEP),
    found: 'other-way',
    from: 'width',
    placeAgainst: false,
  };
}

/**
 * The one thing to change next, and by how much as far as the marks tell, from all marks of a valve: width goes first, then
 * place.
 *
 * Equation: two settings and more: on from the narrowest by .050 in of pushrod or by the same shim again, or where a parabola through three widths is least;
 * width ordinary, on a stud: where the line through the places of two lengths meets the middle; one length: two and a half
 * times its distance from the middle, and no more than .050 in; no further than ink is read to is the middle
 *
 * @param marks [m] of one valve, the one that is judged last; sideways ones say nothing along the rocker
 * @param context [m] the least sweep with its limit, and the mounting
 * @returns what to change, which way, by how much and to what; to try both ways, to leave it; that the width has no word
 * yet; that the marks contradict each other; undefined where the mounting is not known or every mark is sideways
 *
 * Validity: small changes, one arm; all marks made alike. On a shaft or pedestal the place of a mark says nothing of the
 * height: a pivot too high and one too low both carry it toward the pivot.
 * Source: directions on a stud by trade press; width first by common practice; the line, the parabola and the remark on
 * shafts derived here.
 */
export function adviceOf(marks: readonly Mark[], context: MarkContext): Advice | undefined {
  const changed = changedOn(context);
  const all = marks.filter(({ side }) => side !== 'sideways');
  const judged = all.at(-1);
  if (changed === undefined || judged === undefined) return undefined;
  // What has run, or was made on another spring, is not of one line with fresh ink.
  const along = all.filter((mark) => isLike(judged, mark));
  const tried = triedOf(along, changed);
  if (tried.some(sameSettingApart)) return { how: 'contradict', because: 'same-setting' };
  if (changed === 'pushrod' && allMovedBack(tried)) return { how: 'contradict', because: 'sides-swapped' };
  if (changed === 'pushrod' && movedBack(tried)) return { how: 'contradict', because: 'moved-back' };
  const widths = tried.map(({ width }) => width);
  const narrowest = widths.indexOf(Math.min(...widths));
  const differ = spread(widths) > AS_NARROW;
  if (differ && !oneLeast(tried, narrowest)) return { how: 'contradict', because: 'no-one-least' };
  const wide = judged.width > limitOf(context);
  const known = context.leastSweep !== undefined;
  const place = changed === 'pushrod' ? byPlace(along, known ? limitOf(context) : 0) : undefined;
  // While nobody can say whether a mark is wide no length is told to stay: the places say which way, and no way that
  // made it wider.
  if (changed === 'pushrod' && !known) return place?.how === 'change' ? place : { how: 'width-first' };
  if (differ && (wide || !known)) {
    const over = known ? stillWideOver(all, judged, context) : Number.POSITIVE_INFINITY;
    const found = byWidth(tried, narrowest, over, changed);
    const width = found === undefined ? undefined : fromJudged(found, settingOf(judged, changed));
    if (width?.how !== 'change') return known ? (width ?? { how: 'keep' }) : { how: 'width-first' };
    // Both ask for one way: where the places point is nearer to it than a whole step.
    if (
      width.found === 'step' &&
      place?.how === 'change' &&
      place.found === 'line' &&
      place.way === width.way
    )
      return place;
    const against =
      place?.how === 'change' ? place.way !== width.way : place?.how === 'keep' && place.offCentre;
    return { ...width, placeAgainst: against === true };
  }
  const offCentre = place?.how === 'keep' && place.offCentre === true;
  if (place !== undefined && (place.how !== 'keep' || (offCentre && !wide))) return place;
  // At three settings all as wide: no setting mends it.
  const here = tried[narrowest];
  if (wide && tried.length >= 3 && here !== undefined)
    return staysAt(here, stillWideOver(all, judged, context));
  if (wide) return eitherWay(judged, along, changed);
  if (changed === 'stand' && !known && judged.side !== 'centred') return { how: 'both-ways' };
  if (!known) return { how: 'width-first' };
  return place?.how === 'keep' && !wide ? place : { how: 'keep' };
}
