import type { Headline } from '../assessment.ts';
import { lacksSaid } from '../common/lack.ts';
import { listed, lowerFirst, upperFirst } from '../common/said.ts';
import type { GapName } from '../evidence.ts';
import type { ChangeDetail, ChangeGap } from './detail.ts';
import { isFirstPlan, once, placesSaid, sideOf } from './groups.ts';

/** What breaks most where it is gone, first (common practice, no published source). */
const WORST: readonly GapName[] = [
  'piston-to-valve',
  'coil-bind',
  'retainer-to-seal',
  'pushrod-to-head',
  'rocker-to-retainer',
  'slot-to-stud',
  'cover',
];

/** The headline of what is not known yet. */
export const NOT_KNOWN = 'headline:change:not-known';

/** A gap that nothing is known of, on one valve or side. */
export interface Unknown {
  readonly gap: ChangeGap;
  readonly detail: ChangeDetail;
}

/** Gaps that nothing is known of, the worst first; the same valve under several plans is one place. */
function unknownOf(details: readonly ChangeDetail[]): Unknown[] {
  const here = details.filter(isFirstPlan);
  return here
    .flatMap((detail) => detail.gaps.map((gap) => ({ gap, detail })))
    .filter(({ gap }) => gap.after === undefined)
    .toSorted((a, b) => WORST.indexOf(a.gap.name) - WORST.indexOf(b.gap.name));
}

/**
 * Of these the gaps that no valve of their side has been read of: who reads one valve is not sent to all the others,
 * before the answer stands.
 */
export function notMeasuredYet(details: readonly ChangeDetail[]): Unknown[] {
  const read = new Set(
    details
      .filter(isFirstPlan)
      .flatMap((detail) =>
        detail.gaps.flatMap(({ name, after }) => (after === undefined ? [] : [`${sideOf(detail)} ${name}`])),
      ),
  );
  return unknownOf(details).filter(({ gap, detail }) => !read.has(`${sideOf(detail)} ${gap.name}`));
}

const needOf = ({ gap }: Unknown): string => (gap.measure ? '' : listed(lacksSaid(gap.lacks)));

/** `Piston to valve on the intake valves: it needs stroke and rod length`, alike ones together. */
function lineOf(alike: readonly Unknown[]): string {
  const titles = once(alike.map(({ gap }) => gap.title.toLowerCase()));
  const [first] = alike;
  const what = `${upperFirst(listed(titles))} on ${placesSaid(alike)}`;
  if (first === undefined) return '';
  const they = titles.length > 1 ? 'they' : 'it';
  return first.gap.measure
    ? `${what}: ${they} can only be measured`
    : `${what}: ${they} ${titles.length > 1 ? 'need' : 'needs'} ${needOf(first)}`;
}

/** Each gap that is not known, with what it needs, the worst first. */
export function notKnownLines(details: readonly ChangeDetail[]): string[] {
  const unknown = unknownOf(details);
  const needs = once(unknown.map(needOf));
  return needs.flatMap((need) => {
    const here = unknown.filter((each) => needOf(each) === need);
    // Those of one need that lie on other valves have a line of their own.
    const names = once(here.map(({ gap }) => gap.name));
    const places = (name: GapName) => placesSaid(here.filter(({ gap }) => gap.name === name));
    return once(names.map(places)).map((place) =>
      lineOf(here.filter(({ gap }) => places(gap.name) === place)),
    );
  });
}

/** Each gap of each side once: a valve that is read by itself makes no more of them. */
const countOf = (unknown: readonly Unknown[]): number =>
  new Set(unknown.map((each) => `${sideOf(each.detail)} ${each.gap.name}`)).size;

const countSaid = (unknown: readonly Unknown[]): string => {
  const count = countOf(unknown);
  return count === 1 ? 'one gap' : `${count} gaps`;
};

/** The same in a breath, to be said with the answer: `16 gaps, the worst of them pushrod to head`. */
export function notKnownBrief(details: readonly ChangeDetail[]): string | undefined {
  const unknown = unknownOf(details);
  const [worst] = unknown;
  if (worst === undefined) return undefined;
  const title = worst.gap.title.toLowerCase();
  return countOf(unknown) === 1
    ? `${title} on ${placesSaid([worst])}`
    : `${countSaid(unknown)}, the worst of them ${title}`;
}

/** How many gaps nothing is known of, and the worst of them with what it needs. */
export function notKnownHeadline(details: readonly ChangeDetail[]): Headline[] {
  const unknown = unknownOf(details);
  const [worst] = notKnownLines(details);
  if (worst === undefined) return [];
  const count = countSaid(unknown);
  return [
    {
      id: NOT_KNOWN,
      about: { of: 'build' },
      step: 'consequences',
      sentence: `Not known yet: ${count}. ${countOf(unknown) === 1 ? '' : 'The worst: '}${countOf(unknown) === 1 ? worst : lowerFirst(worst)}.`,
    },
  ];
}
