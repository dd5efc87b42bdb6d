import { keysOf, sideOfValve, VALVES, valveSaid } from '../../../../shared/schemas/words.ts';
import { touches } from '../common/gap-said.ts';
import { lacksSaid } from '../common/lack.ts';
import { keyOf, listed, nominalSaid, subjectSaid } from '../common/said.ts';
import type { GapName } from '../evidence.ts';
import type { ChangeDetail, ChangeGap } from './detail.ts';

interface Member {
  readonly gap: ChangeGap;
  readonly detail: ChangeDetail;
}

/** One gap of several valves that stands alike: told once, with where it is worst. */
export interface GapGroup {
  readonly name: GapName;
  /** Ends ids that name the gap: empty where the same gap has one limit on all valves. */
  readonly key: string;
  readonly word: ChangeGap['word'];
  readonly touching: boolean;
  /** The worst first. */
  readonly members: readonly [Member, ...Member[]];
}

const roomOf = ({ after, limit }: ChangeGap): number =>
  (after?.low ?? after?.value ?? after?.high ?? 0) - limit.value;

const RANK = { short: 1, close: 2, clear: 4 } as const;
/** Those that would touch, short, close, no word yet, clear. */
export const rankOf = ({ word, touching }: Pick<GapGroup, 'word' | 'touching'>): number =>
  touching ? 0 : word === undefined ? 3 : RANK[word];

/** The side of a detail. */
export const sideOf = ({ about }: Pick<ChangeDetail, 'about'>): string =>
  about.of === 'valve' ? sideOfValve(about.valve) : about.of === 'side' ? about.valve : '';

/** Against several limits a gap is several: what is worst against the one says nothing against another. */
const limitKey = (details: readonly ChangeDetail[]) => {
  const limits = new Map<GapName, Set<number>>();
  for (const { gaps } of details)
    for (const { name, limit } of gaps) limits.set(name, (limits.get(name) ?? new Set()).add(limit.value));
  return (detail: ChangeDetail, { name }: ChangeGap): string =>
    (limits.get(name)?.size ?? 0) > 1 ? `:${sideOf(detail)}` : '';
};

/**
 * Every known gap of these valves, alike ones against one limit together: those that would touch, short, close, no word
 * yet, clear.
 */
export function groupsOf(details: readonly ChangeDetail[]): GapGroup[] {
  const groups = new Map<string, [Member, ...Member[]]>();
  const keyOfLimit = limitKey(details);
  for (const detail of details)
    for (const gap of detail.gaps) {
      if (gap.after === undefined) continue;
      const key = `${gap.name} ${gap.word ?? lacksSaid(gap.lacks).join()} ${gap.word === 'short' && touches(gap.after)}${keyOfLimit(detail, gap)}`;
      const here = groups.get(key);
      if (here === undefined) groups.set(key, [{ gap, detail }]);
      else here.push({ gap, detail });
    }
  return [...groups.values()]
    .map(([first, ...rest]): GapGroup => {
      const [worst = first, ...others] = [first, ...rest].toSorted((a, b) => roomOf(a.gap) - roomOf(b.gap));
      const { name, word, after = {} } = worst.gap;
      const key = keyOfLimit(worst.detail, worst.gap);
      return { name, key, word, touching: word === 'short' && touches(after), members: [worst, ...others] };
    })
    .toSorted((a, b) => rankOf(a) - rankOf(b) || roomOf(a.members[0].gap) - roomOf(b.members[0].gap));
}

/** Each once, in the order in which they come. */
export const once = <Each>(items: readonly Each[]): Each[] => [...new Set(items)];

/** What all of them have alike, such as the ratio that they were worked out with; nothing where one has another. */
export function sharedBy<Each>(
  members: readonly Each[],
  of: (member: Each) => string | undefined,
): string | undefined {
  const [said, ...others] = once(members.map(of));
  return others.length === 0 ? said : undefined;
}

/** `, with the 1.52 stamped on it of 1 exhaust`: of several that have not all the same, that of the worst. */
export function ofWorst(members: GapGroup['members'], of: (member: Member) => string | undefined): string {
  const [worst] = members;
  const said = of(worst);
  return said === undefined || sharedBy(members, of) !== undefined
    ? ''
    : `, with ${said} of ${subjectSaid(worst.detail.about)}`;
}

/** `1, 3 and 5 intake and the exhaust valves` */
export function placesSaid(members: readonly Pick<Member, 'detail'>[]): string {
  const abouts = members.map(({ detail }) => detail.about);
  const whole = once(abouts.flatMap((about) => (about.of === 'side' ? [`the ${subjectSaid(about)}`] : [])));
  const valves = keysOf(VALVES).flatMap((name) => {
    const cylinders = once(
      abouts.flatMap((about) => (about.of === 'valve' && about.valve === name ? [about.cylinder] : [])),
    ).toSorted((a, b) => a - b);
    return cylinders.length === 0 ? [] : [`${listed(cylinders.map(String))} ${valveSaid(name)}`];
  });
  return listed([...valves, ...whole]);
}

/** The plan of its side that is to be fitted; without a plan, what is on it. */
export const isFirstPlan = ({ key, about }: ChangeDetail): boolean => key === keyOf(about);

/** Valves of one plan together; without a plan, all of them. */
export interface PlanGroup {
  readonly plan?: number;
  /** Ends the ids: empty of the first plan, and where there is none. */
  readonly key: string;
  /** It is thought of beside a ratio that is to be fitted. */
  readonly isBeside: boolean;
  readonly details: readonly ChangeDetail[];
}

export function byPlan(details: readonly ChangeDetail[]): PlanGroup[] {
  const plans = once(details.map(({ plan }) => plan));
  return plans.map((plan, index) => {
    const here = details.filter((detail) => detail.plan === plan);
    return {
      ...(plan === undefined ? {} : { plan }),
      key: index === 0 || plan === undefined ? '' : `:planned-${nominalSaid(plan)}`,
      isBeside: here.every(({ beside }) => beside === true),
      details: here,
    };
  });
}
