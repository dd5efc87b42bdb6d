import type { Headline, Judgement } from '../../assessment.ts';
import { byPlace, lowerFirst, placeOf, valveSubject } from '../../common/said.ts';
import type { Evidence } from '../../evidence.ts';
import type { GroupExplained } from '../compared/explain.ts';

const newest = ({ known }: GroupExplained): number =>
  Math.max(0, ...known.map(({ read }) => read.setUp.number));

export interface OfValve {
  readonly each: GroupExplained;
  /** Other arms were read there too: then it is named. */
  readonly others: boolean;
}

/** Of several arms that were read on one valve the one that sits there now, else the one that was read last. */
export function ofEachValve(evidence: Evidence, explained: readonly GroupExplained[]): OfValve[] {
  const read = explained.filter(({ given }) => given !== undefined);
  const places = [...new Set(read.map(({ group }) => placeOf(group)))];
  return places.flatMap((place) => {
    const here = read.filter(({ group }) => placeOf(group) === place);
    const seat = evidence.seats.find((each) => placeOf(each) === place)?.armId;
    const now = here.find(({ group }) => seat !== undefined && group.armId === seat);
    const last = here.toSorted((a, b) => newest(a) - newest(b)).at(-1);
    const each = now ?? last;
    return each === undefined ? [] : [{ each, others: here.length > 1 }];
  });
}

/** ` with arm A`, where another was read on that valve too. */
export const armSaid = ({ each: { arm }, others }: OfValve): string =>
  others && arm !== undefined ? ` with ${arm.name}` : '';

/** What the running spring takes off, where both springs were read. */
function deflectionHeadline(group: GroupExplained['group'], judgements: readonly Judgement[]): Headline[] {
  const judgement = judgements.find(({ id }) => id === `usual-deflection:${group.key}`);
  if (judgement === undefined) return [];
  return [
    {
      id: `headline:deflection:${group.cylinder}-${group.valve}`,
      about: valveSubject(group),
      step: 'ratio',
      sentence: `${placeOf(group)}: ${lowerFirst(judgement.sentence)}`,
      judgementId: judgement.id,
      quantityId: `deflection:${group.key}`,
    },
  ];
}

/** The answer in one line for each valve that was read: the mark first, else what it is sold as, else the names left. */
export function ratioHeadlines(
  evidence: Evidence,
  explained: readonly GroupExplained[],
  judgements: readonly Judgement[],
): Headline[] {
  return ofEachValve(evidence, explained)
    .toSorted((a, b) => byPlace(a.each.group, b.each.group))
    .flatMap((valve) => {
      const { group, claims, refused } = valve.each;
      const id = `ratio:${group.key}:${claims[0]?.to ?? 'nominal'}`;
      const judgement = judgements.find((each) => each.id === id);
      const said = judgement?.sentence ?? (refused === undefined ? '' : `${refused}.`);
      return [
        {
          id: `headline:ratio:${group.cylinder}-${group.valve}`,
          about: valveSubject(group),
          step: 'ratio',
          sentence: `${placeOf(group)}${armSaid(valve)}: ${lowerFirst(said)}`,
          ...(judgement === undefined ? {} : { judgementId: judgement.id }),
          quantityId: `arm-ratio:${group.key}`,
        },
        ...deflectionHeadline(group, judgements),
      ];
    });
}
