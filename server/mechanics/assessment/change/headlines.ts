import { defined } from '../../../../shared/defined.ts';
import type { Headline, NotToRun } from '../assessment.ts';
import { firstSaid } from '../common/first-said.ts';
import { touches } from '../common/gap-said.ts';
import { lacksSaid } from '../common/lack.ts';
import { keyOf, listed, lowerFirst, nominalSaid, upperFirst } from '../common/said.ts';
import type { ChangeDetail } from './detail.ts';
import {
  byPlan,
  type GapGroup,
  groupsOf,
  ofWorst,
  once,
  type PlanGroup,
  placesSaid,
  rankOf,
  sharedBy,
} from './groups.ts';
import { hangsOn } from './hangs-on.ts';
import { gapToldAtWorst } from './told.ts';

const titleOf = ({ members: [{ gap }] }: GapGroup): string => gap.title.toLowerCase();

/** `1 and 3 intake`, with the ratio that they all have where it is not the planned one. */
function where(group: GapGroup): string {
  const ratio = ratioOf(group);
  return `${placesSaid(group.members)}${ratio === undefined ? '' : ` with ${ratio}`}`;
}

/** The one ratio that they were all worked out with; that of a plan is said of all of them. */
function ratioOf({ members }: GapGroup): string | undefined {
  const [{ detail }] = members;
  // An arm of the plan that was measured is none as it is planned: its own ratio is said.
  const isPlanned = detail.plan !== undefined && detail.after?.from !== 'measured';
  return isPlanned ? undefined : sharedBy(members, (each) => each.detail.after?.said);
}

/** Of several, the worst of which is an arm of the plan that was measured: its own ratio, and where. */
function worstOf({ members }: GapGroup): string {
  const [{ detail }] = members;
  const isOwn = detail.plan !== undefined && detail.after?.from === 'measured';
  return isOwn ? ofWorst(members, (each) => each.detail.after?.said) : '';
}

/** `room to coil bind on 1 and 3 intake: short, at worst .035 in (.041 to be expected), calculated, against .060 in` */
function groupSaid(group: GapGroup, shared: string | undefined): string {
  const [{ gap }, ...others] = group.members;
  const told = gapToldAtWorst(gap, others.length > 0);
  const isSaid = shared !== undefined && ratioOf(group) === shared;
  const place = isSaid ? placesSaid(group.members) : where(group);
  return `${titleOf(group)} on ${place}: ${group.word ?? 'no word yet'}, ${told}${worstOf(group)}`;
}

/** Gaps with no word, each named once, and the first thing that they need; the tables have the rest. */
function heldSaid(groups: readonly GapGroup[]): string[] {
  const held = groups.filter(({ word }) => word === undefined);
  // Of a gap that has its word elsewhere it is said where it has none.
  const whereOf = (group: GapGroup): string =>
    groups.some((other) => other.word !== undefined && other.name === group.name)
      ? ` on ${placesSaid(group.members)}`
      : '';
  const named = once(held.map(whereOf)).map((place) => {
    const titles = held.filter((group) => whereOf(group) === place).map(titleOf);
    return `${listed(once(titles))}${place}`;
  });
  const needs = once(held.flatMap(({ members }) => members.flatMap(({ gap }) => lacksSaid(gap.lacks))));
  if (held.length === 0) return [];
  return [`no word yet on ${listed(named)}. ${firstSaid(needs)}`];
}

/** More than this nobody takes in at once over the phone. */
const MOST_WORDS = 80;
const wordsIn = (text: string): number => text.split(/\s+/).filter((word) => word !== '').length;

/** Gaps that there is no room to tell in whole: named by their word, and of one that is told already with where. */
function alsoSaid(groups: readonly GapGroup[], told: readonly GapGroup[]): string[] {
  const titles = told.map(titleOf);
  const named = (group: GapGroup): string =>
    titles.includes(titleOf(group)) ? `${titleOf(group)} on ${placesSaid(group.members)}` : titleOf(group);
  const words = once(groups.flatMap(({ word }) => word ?? []));
  return words.map(
    (word) => `also ${word}: ${listed(once(groups.filter((group) => group.word === word).map(named)))}.`,
  );
}

/** A gap is a sentence, the worst first and always in whole; of the others as many as there is room for. */
function toldSaid(told: readonly GapGroup[], shared: string | undefined, room: number): string[] {
  const [worst, ...next] = told.map((group) => upperFirst(groupSaid(group, shared)));
  if (worst === undefined) return [];
  const whole = [`worst first: ${lowerFirst(worst)}.`, ...next.map((said) => `${said}.`)];
  const cutAt = (count: number): string[] => [
    ...whole.slice(0, count),
    ...alsoSaid(told.slice(count), told.slice(0, count)),
  ];
  const most = whole.findLastIndex((_, index) => wordsIn(cutAt(index + 1).join(' ')) <= room);
  return cutAt(Math.max(most, 0) + 1);
}

function sentenceOf({ plan }: PlanGroup, groups: readonly GapGroup[]): string {
  const bad = groups.filter(({ word }) => word === 'short' || word === 'close');
  const clear = groups.filter(({ word }) => word === 'clear');
  const [least, ...rest] = clear;
  const told = bad.length > 0 ? bad : least === undefined ? [] : [least];
  const left = once((bad.length > 0 ? clear : rest).map(titleOf)).filter(
    (title) => !told.some((group) => titleOf(group) === title),
  );
  // One ratio that all of several have is said once.
  const shared = told.length > 1 ? sharedBy(told, ratioOf) : undefined;
  const ratio = plan === undefined ? shared : `the planned ${nominalSaid(plan)}`;
  const start = ratio === undefined ? '' : `With ${ratio}, `;
  const others = left.length === 0 ? [] : [`clear: ${listed(left)}.`];
  const short = bad.some(({ word }) => word === 'short');
  const end = short ? [plan === undefined ? 'don’t run it.' : `don’t fit the ${nominalSaid(plan)}.`] : [];
  const held = heldSaid(groups);
  const room = MOST_WORDS - wordsIn([start, ...end, ...others, ...held].join(' '));
  const [lead = '', ...more] = [...toldSaid(told, shared, room), ...end, ...others, ...held];
  return [upperFirst(`${start}${lead}`), ...more.map(upperFirst)].join(' ');
}

/** What is to be fitted, then what is set beside it; each by the worst of its gaps. */
function worstPlanFirst(details: readonly ChangeDetail[]) {
  const all = byPlan(details).map((plan) => ({ plan, groups: groupsOf(plan.details) }));
  const rank = ({ groups: [worst] }: (typeof all)[number]) => (worst === undefined ? 9 : rankOf(worst));
  return all.toSorted((a, b) => Number(a.plan.isBeside) - Number(b.plan.isBeside) || rank(a) - rank(b));
}

/** The answer in one line for each plan, what is to be fitted first: every gap that is not clear, none left out. */
export function worstHeadlines(details: readonly ChangeDetail[]): Headline[] {
  return worstPlanFirst(details).flatMap(({ plan, groups }): Headline[] => {
    const [worst] = groups;
    if (worst === undefined) return [];
    return [
      {
        id: `headline:change:worst${plan.key}`,
        about: { of: 'build' },
        step: 'consequences',
        sentence: sentenceOf(plan, groups),
        ...defined({ judgementId: worst.members[0].gap.judgementId }),
      },
    ];
  });
}

/** A ratio that was read and is not calculated with yet, once for each valve. */
export function notUsedHeadlines(details: readonly ChangeDetail[]): Headline[] {
  const byValve = new Map(details.map((detail) => [keyOf(detail.about), detail]));
  return [...byValve].flatMap(([key, { about, notUsed }]): Headline[] =>
    notUsed === undefined
      ? []
      : [{ id: `headline:change:not-used:${key}`, about, step: 'consequences', sentence: notUsed }],
  );
}

/** It can’t be told from its limit, and what is to be expected is that the parts touch. */
const isToTouch = ({ word, members: [{ gap }] }: GapGroup): boolean =>
  word === 'close' && gap.after !== undefined && touches(gap.after);

const SHOP_LOOKS = 'a qualified shop looks before it runs';

/** What is not to be run or fitted, and what is done instead. */
function barred(group: GapGroup, plan: number | undefined) {
  const [{ gap }, ...others] = group.members;
  const what = `${titleOf(group)} on ${where(group)}`;
  const told = gapToldAtWorst(gap, others.length > 0);
  const fit = plan === undefined ? undefined : `Don’t fit the planned ${nominalSaid(plan)}`;
  const start = fit ?? 'Do not run it';
  if (isToTouch(group))
    return {
      sentence: `${start} before it is measured: ${what} is close, ${told}.`,
      wayOut: `Measure the gap${fit === undefined ? ' by hand, gently' : ' on a mock-up'}; ${SHOP_LOOKS}.`,
    };
  return {
    sentence: `${start}: ${what} comes out short, ${told}.`,
    wayOut:
      fit === undefined
        ? 'Measure the gap, and have a qualified shop look before it runs.'
        : `Change the parts or the ratio, or measure the gap on a mock-up; ${SHOP_LOOKS}.`,
  };
}

/**
 * Gaps that come out short by calculation, or are expected to be gone: parts that are planned are not fitted, an engine as
 * it is is not run.
 */
export function shortGaps(
  details: readonly ChangeDetail[],
  questions: Parameters<typeof hangsOn>[1],
): NotToRun[] {
  return byPlan(details).flatMap(({ plan, key, isBeside, details: here }) =>
    groupsOf(here).flatMap((group): NotToRun[] => {
      const { word, members, touching, name } = group;
      const isClose = isToTouch(group);
      if ((word !== 'short' && !isClose) || members[0].gap.ofSheet === true) return [];
      const open = hangsOn(group, questions);
      return [
        {
          id: `not-to-run:gap-${isClose ? 'close' : 'short'}:${name}${group.key}${touching ? ':touching' : ''}${key}`,
          about: { of: 'build' },
          what: plan === undefined ? 'run' : 'fit',
          ...(isBeside ? { beside: true } : {}),
          ...(open.length === 0 ? {} : { hangsOn: open }),
          ...barred(group, plan),
        },
      ];
    }),
  );
}
