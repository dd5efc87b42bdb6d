import { IN } from '../kit/si.ts';
import { alongRocker, nextLength, ONE_LENGTH, STEP } from './next-length.ts';
import type { Mark, MarkContext } from './types.ts';

/** Widths that differ by less are as narrow: ink is not read finer. */
const AS_NARROW = 0.01 * IN;
/** One width is good to this, either way. */
export const INK = AS_NARROW / 2;
/** What an ink mark may hold beside the sweep: the contact line's own width; common practice, no published source. */
const INK_LINE = AS_NARROW;
/** Two marks of one setting that are further apart than this are not of one thing. */
const SAME = 0.02 * IN;
/** A line or a curve through marks is told no finer. */
const FINEST = 0.005 * IN;

/** What is changed to move the mark: the pushrod on a stud, the stand on a shaft or pedestal. */
type Changed = 'pushrod' | 'stand';

/** The one direction that follows from all marks of a valve. */
export type Advice =
  /** `best`: the widths are least there, and what it is over the ordinary may be the ink line's own width. */
  | { readonly how: 'keep'; readonly at?: number; readonly best?: true }
  /** The widths are least there, and no setting makes it ordinary. */
  | { readonly how: 'still-wide'; readonly at: number; readonly width: number }
  | {
      readonly how: 'change';
      /** Longer, or higher. */
      readonly way: 'up' | 'down';
      readonly by: number;
      readonly to?: number;
      /** A step to try, where the marks' places point, or where their widths are least. */
      readonly found: 'step' | 'line' | 'least';
      readonly from: 'width' | 'place';
      /** The place asks for the other way; width goes first. */
      readonly placeAgainst: boolean;
    }
  | { readonly how: 'both-ways' }
  | { readonly how: 'contradict'; readonly because: 'same-setting' | 'moved-back' | 'no-one-least' };

const changedOn = ({ mounting }: MarkContext): Changed | undefined =>
  mounting === undefined ? undefined : mounting === 'stud' ? 'pushrod' : 'stand';

const settingOf = (mark: Mark, changed: Changed): number | undefined =>
  changed === 'pushrod' ? mark.pushrod : mark.shims;

interface Tried {
  readonly at: number;
  readonly marks: readonly Mark[];
  /** The narrowest of it. */
  readonly width: number;
  /** Middle of its marks along the rocker; left out where none was told as a figure. */
  readonly along?: number;
}

const spread = (values: readonly number[]): number =>
  values.length === 0 ? 0 : Math.max(...values) - Math.min(...values);

/** Marks by what they were made with, the shortest or lowest first. */
function triedOf(marks: readonly Mark[], changed: Changed): Tried[] {
  const settings: { at: number; marks: Mark[] }[] = [];
  for (const mark of marks) {
    const at = settingOf(mark, changed);
    if (at === undefined) continue;
    const same = settings.find((each) => Math.abs(each.at - at) < ONE_LENGTH);
    if (same === undefined) settings.push({ at, marks: [mark] });
    else same.marks.push(mark);
  }
  return settings
    .map(({ at, marks: own }): Tried => {
      const places = own.flatMap((mark) => alongRocker(mark) ?? []);
      const along = places.reduce((sum, each) => sum + each, 0) / places.length;
      return {
        at,
        marks: own,
        width: Math.min(...own.map(({ width }) => width)),
        ...(places.length === 0 ? {} : { along }),
      };
    })
    .sort((a, b) => a.at - b.at);
}

const sameSettingApart = ({ marks }: Tried): boolean =>
  spread(marks.map(({ width }) => width)) > SAME ||
  spread(marks.flatMap((mark) => alongRocker(mark) ?? [])) > SAME;

/** Toward the exhaust side as the pushrod gets longer, and never back: what the trade goes by on studs. */
const movedBack = (tried: readonly Tried[]): boolean =>
  tried.some(({ along: before }, index) => {
    const after = tried[index + 1]?.along;
    return before !== undefined && after !== undefined && after < before - AS_NARROW;
  });

/** Widths fall to one least and rise after it, as far as ink is read. */
const oneLeast = (tried: readonly Tried[], least: number): boolean =>
  tried.every(({ width }, index) => {
    const next = tried[index + 1]?.width;
    if (next === undefined) return true;
    return index < least ? next <= width + AS_NARROW : next >= width - AS_NARROW;
  });

const rounded = (length: number): number => Math.round(length / FINEST) * FINEST;

interface Least {
  readonly at: number;
  readonly width: number;
}

/** Where a parabola through three widths is least, between the outer two, and how wide it is there. */
function leastBetween([a, b, c]: Three): Least {
  const [left, right] = [(b.width - a.width) / (b.at - a.at), (c.width - b.width) / (c.at - b.at)];
  if (right <= left) return b;
  const curve = (right - left) / (c.at - a.at);
  const at = Math.min(c.at, Math.max(a.at, (a.at + b.at) / 2 - left / 2 / curve));
  return { at, width: a.width + left * (at - a.at) + curve * (at - a.at) * (at - b.at) };
}

type Three = readonly [Tried, Tried, Tried];

/** How far that place moves when each width is read as much wrong as ink is, root of the sum of squares. */
function leastWithin(three: Three): number {
  const { at } = leastBetween(three);
  const [a, b, c] = three;
  const wider = (tried: Tried): Tried => ({ ...tried, width: tried.width + INK });
  const moved: readonly Three[] = [
    [wider(a), b, c],
    [a, wider(b), c],
    [a, b, wider(c)],
  ];
  return Math.hypot(...moved.map((each) => leastBetween(each).at - at));
}

function change(from: number | undefined, way: 'up' | 'down', by: number) {
  return { way, by, ...(from === undefined ? {} : { to: from + (way === 'up' ? by : -by) }) } as const;
}

/** No other setting is narrower. */
const staysAt = ({ at, width }: Tried, limit: number): Advice =>
  width > limit + INK_LINE ? { how: 'still-wide', at, width } : { how: 'keep', at, best: true };

/** The narrowest lies between two others: it is the one to keep, or the curve says where a narrower one is. */
function between(three: Three, limit: number): Advice {
  const [, here] = three;
  const curve = leastBetween(three);
  const to = rounded(curve.at);
  // Nearer than the widths themselves bear is no other length.
  const stays = Math.abs(curve.at - here.at) <= Math.max(FINEST / 2, leastWithin(three));
  if (stays) return staysAt(here, limit);
  if (curve.width > limit + INK_LINE) return { how: 'still-wide', at: to, width: curve.width };
  return {
    how: 'change',
    way: to > here.at ? 'up' : 'down',
    by: Math.abs(to - here.at),
    to,
    found: 'least',
    from: 'width',
    placeAgainst: false,
  };
}

/** By widths at two settings or more: on from the narrowest, or between its neighbours. */
function byWidth(tried: readonly Tried[], least: number, limit: number): Advice | undefined {
  const [before, here, after] = [tried[least - 1], tried[least], tried[least + 1]];
  if (here === undefined) return undefined;
  if (before !== undefined && after !== undefined) return between([before, here, after], limit);
  return {
    how: 'change',
    ...change(here.at, before === undefined ? 'down' : 'up', STEP),
    found: 'step',
    from: 'width',
    placeAgainst: false,
  };
}

/** Told from the mark that is judged: whoever has that one in front of him changes it by so much. */
function fromJudged(advice: Advice, setting: number | undefined): Advice {
  if (advice.how !== 'change' || advice.to === undefined || setting === undefined) return advice;
  const by = Math.abs(advice.to - setting);
  if (by < FINEST / 2) return { how: 'keep', at: advice.to };
  return { ...advice, by, way: advice.to > setting ? 'up' : 'down' };
}

/** On a stud by its place: toward the valley is too short, toward the exhaust side too long. */
function byPlace(marks: readonly Mark[]): Advice {
  const judged = marks.at(-1);
  if (judged === undefined || judged.side === 'centred') return { how: 'keep' };
  const next = nextLength(marks);
  if (next?.how === 'against') return { how: 'contradict', because: 'moved-back' };
  if (next === undefined || next.how === 'step') {
    const way = judged.side === 'valley' ? 'up' : 'down';
    return {
      how: 'change',
      ...change(judged.pushrod, way, STEP),
      found: 'step',
      from: 'place',
      placeAgainst: false,
    };
  }
  const by = Math.abs(next.change);
  // A length that was inked, and made it wider, is not tried once more for its place.
  const wasWider = marks.some(
    ({ pushrod, width }) =>
      pushrod !== undefined &&
      Math.abs(pushrod - next.length) <= FINEST + ONE_LENGTH &&
      width > judged.width + AS_NARROW,
  );
  if (wasWider) return { how: 'keep' };
  if (by < FINEST / 2) return { how: 'keep', at: next.length };
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

/**
 * The one thing to change next, and by how much as far as the marks tell, from all marks of a valve: width goes first, then
 * place.
 *
 * Equation: two settings and more: on from the narrowest by .050 in, or where a parabola through three widths is least;
 * width ordinary, on a stud: where the line through the places of two lengths meets the middle; one length: .050 in
 *
 * @param marks [m] of one valve, the one that is judged last; sideways ones say nothing along the rocker
 * @param context [m] the least sweep with its limit, and the mounting
 * @returns what to change, which way, by how much and to what; to try both ways, to leave it; that the marks contradict
 * each other; undefined where the mounting is not known or every mark is sideways
 *
 * Validity: small changes, one arm; all marks made alike. On a shaft or pedestal the place of a mark says nothing of the
 * height: a pivot too high and one too low both carry it toward the pivot.
 * Source: directions on a stud by trade press; width first by common practice; the line, the parabola and the remark on
 * shafts derived here.
 */
export function adviceOf(marks: readonly Mark[], context: MarkContext): Advice | undefined {
  const changed = changedOn(context);
  const along = marks.filter(({ side }) => side !== 'sideways');
  const judged = along.at(-1);
  if (changed === undefined || judged === undefined) return undefined;
  const tried = triedOf(along, changed);
  if (tried.some(sameSettingApart)) return { how: 'contradict', because: 'same-setting' };
  if (changed === 'pushrod' && movedBack(tried)) return { how: 'contradict', because: 'moved-back' };
  const widths = tried.map(({ width }) => width);
  const narrowest = widths.indexOf(Math.min(...widths));
  const differ = spread(widths) > AS_NARROW;
  if (differ && !oneLeast(tried, narrowest)) return { how: 'contradict', because: 'no-one-least' };
  const wide = judged.width > limitOf(context);
  const known = context.leastSweep !== undefined;
  const place = changed === 'pushrod' ? byPlace(along) : undefined;
  if (differ && (wide || !known)) {
    const found = byWidth(tried, narrowest, known ? limitOf(context) : Number.POSITIVE_INFINITY);
    const width = found === undefined ? undefined : fromJudged(found, settingOf(judged, changed));
    if (width?.how !== 'change') return width ?? { how: 'keep' };
    return { ...width, placeAgainst: place?.how === 'change' && place.way !== width.way };
  }
  if (place !== undefined && place.how !== 'keep') return place;
  // At three settings all as wide: no setting mends it.
  const here = tried[narrowest];
  if (wide && tried.length >= 3 && here !== undefined) return staysAt(here, limitOf(context));
  if (wide) return { how: 'both-ways' };
  if (changed === 'stand' && !known && judged.side !== 'centred') return { how: 'both-ways' };
  return { how: 'keep' };
}
