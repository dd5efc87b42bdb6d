import { allowance } from '../kit/allowances.ts';
import { alongRocker, ONE_LENGTH } from './next-length.ts';
import type { Mark, MarkContext } from './types.ts';

/** Widths that differ by less are as narrow: ink is not read finer. */
export const AS_NARROW = allowance('mark-width');
/** Places that differ by less are one place. */
const ALONG = allowance('mark-one-place');
/** Two marks of one setting that are further apart than this are not of one thing. */
const SAME = allowance('mark-same');

/** What is changed to move the mark: the pushrod on a stud, the stand on a shaft or pedestal. */
export type Changed = 'pushrod' | 'stand';

export const changedOn = ({ mounting }: MarkContext): Changed | undefined =>
  mounting === undefined ? undefined : mounting === 'stud' ? 'pushrod' : 'stand';

export const settingOf = (mark: Mark, changed: Changed): number | undefined =>
  changed === 'pushrod' ? mark.pushrod : mark.shims;

export interface Tried {
  readonly at: number;
  readonly marks: readonly Mark[];
  /** The narrowest of it. */
  readonly width: number;
  /** Middle of its marks along the rocker; left out where none was told as a figure. */
  readonly along?: number;
}

export const spread = (values: readonly number[]): number =>
  values.length === 0 ? 0 : Math.max(...values) - Math.min(...values);

/** Marks by what they were made with, the shortest or lowest first. */
export function triedOf(marks: readonly Mark[], changed: Changed): Tried[] {
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

export const sameSettingApart = ({ marks }: Tried): boolean =>
  spread(marks.map(({ width }) => width)) > SAME ||
  spread(marks.flatMap((mark) => alongRocker(mark) ?? [])) > SAME;

/** Toward the exhaust side as the pushrod gets longer, and never back: what the trade goes by on studs. */
export const movedBack = (tried: readonly Tried[]): boolean =>
  tried.some(({ along: before }, index) => {
    const after = tried[index + 1]?.along;
    return before !== undefined && after !== undefined && after < before - AS_NARROW;
  });

/** At three settings or more, and every one of them the other way: no reading is wrong so, but what a side was called may be. */
export const allMovedBack = (tried: readonly Tried[]): boolean => {
  const places = tried.flatMap(({ along }) => along ?? []);
  return (
    places.length >= 3 && places.every((at, index) => index === 0 || at < (places[index - 1] ?? at) - ALONG)
  );
};

/** Widths fall to one least and rise after it, as far as ink is read. */
export const oneLeast = (tried: readonly Tried[], least: number): boolean =>
  tried.every(({ width }, index) => {
    const next = tried[index + 1]?.width;
    if (next === undefined) return true;
    return index < least ? next <= width + AS_NARROW : next >= width - AS_NARROW;
  });
