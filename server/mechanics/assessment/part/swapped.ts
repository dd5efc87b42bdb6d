import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import { halfWidthOf } from '../../identify/how-read.ts';
import { IDENTIFICATION_MODEL, type SizeModel } from '../../identify/model.ts';
import { toolWithin } from '../../identify/tools.ts';
import { IN } from '../../kit/si.ts';
import { upperFirst } from '../common/said.ts';
import { AS_READ, amongOf, type CountedReading, choice, type PartDoubt, without } from './doubts.ts';
import { nameOf } from './size-said.ts';

/** Of two sizes of a rocker the first is never the larger one. */
const PAIRS = [
  ['hole-across-trunnion', 'body-width'],
  ['hole-across-trunnion', 'width-across-trunnion'],
  ['body-width', 'width-across-trunnion'],
  ['pivot-to-cup', 'pivot-to-tip'],
] as const;

const roomOf = (reading: CountedReading): number => halfWidthOf({ ...reading, size: reading.size ?? 0 });

const ordered = (readings: readonly CountedReading[], kind: string, asked: ReadonlySet<string>) =>
  readings
    .filter((each) => each.kind === kind && each.size !== undefined && !asked.has(each.id))
    .toSorted((a, b) => (a.size ?? 0) - (b.size ?? 0));

function exchange(
  now: readonly CountedReading[],
  { small, large }: { readonly small: string; readonly large: string },
  ids: { readonly small: readonly string[]; readonly large: readonly string[] },
): CountedReading[] {
  const as = (each: CountedReading, kind: string) => ({
    ...each,
    kind,
    countsAs: `counts as ${nameOf(kind)}`,
  });
  return now.map((each) => {
    if (ids.small.includes(each.id)) return as(each, large);
    return ids.large.includes(each.id) ? as(each, small) : each;
  });
}

/** Of two readings of two names whether each may be the other's: `said` goes on from both. */
interface Doubted {
  readonly isSo: (small: CountedReading, large: CountedReading) => boolean;
  readonly said: string;
}

const LARGER: Doubted = {
  isSo: (small, large) => (small.size ?? 0) - (large.size ?? 0) > roomOf(small) + roomOf(large),
  said: ': that cannot be',
};

function swappedPair(
  pair: { readonly small: string; readonly large: string },
  smalls: readonly CountedReading[],
  larges: readonly CountedReading[],
  { isSo, said }: Doubted = LARGER,
): PartDoubt[] {
  const [least, most] = [smalls[0], larges.at(-1)];
  if (least?.size === undefined || most?.size === undefined || !isSo(least, most)) return [];
  const ids = { small: smalls.map(({ id }) => id).sort(), large: larges.map(({ id }) => id).sort() };
  const both = [...ids.small, ...ids.large];
  const [one, other] = [nameOf(pair.small), nameOf(pair.large)];
  const again = 'It does not count; it is read again.';
  return [
    {
      code: 'sizes-swapped',
      ask: `${upperFirst(one)}, ${asEntered(least.readAs)}, is larger than ${other}, ${asEntered(most.readAs)}${said}. Is each entered under the other’s name?`,
      test: `read both again: ${one}, then ${other}`,
      restsOn: both,
      among: amongOf(both),
      choices: [
        choice('swapped', 'Yes, each under the other’s name', 'Each counts as the other; the entries stay.'),
        choice('first-misread', `The ${one} was misread`, again),
        choice('second-misread', `The ${other} was misread`, again),
        { ...AS_READ, label: 'Both read again: they are as they were read' },
      ],
      effect: (now, chosen) => {
        if (chosen === 'not-found') return now;
        if (chosen === 'swapped') return exchange(now, pair, ids);
        if (chosen === 'first-misread') return without(now, ids.small);
        return without(now, chosen === 'second-misread' ? ids.large : both);
      },
    },
  ];
}

/** Holes that rockers are made with; over the next none is read, and rollers go up to the last. */
const OF_HOLE = IDENTIFICATION_MODEL.sizes['hole-across-trunnion'];
const OF_ROLLER = IDENTIFICATION_MODEL.sizes['roller-diameter'];
const nominalsOf = ({ unknown }: SizeModel): number[] => unknown.nominals.map(({ at }) => at * IN);
const HOLES = nominalsOf(OF_HOLE);
const AGREES = OF_HOLE.agrees.below * IN;
const MOST_HOLE = Math.max(...HOLES) + OF_HOLE.cannotTell.above * IN;
const MOST_ROLLER = Math.max(...nominalsOf(OF_ROLLER)) + OF_ROLLER.agrees.above * IN;

/** A hole that only a roller has, and a roller that reads like a hole. */
const AS_A_ROLLER: Doubted = {
  isSo: ({ size: hole = 0 }, { size: roller = 0 }) =>
    hole > MOST_HOLE && hole <= MOST_ROLLER && HOLES.some((nominal) => Math.abs(roller - nominal) <= AGREES),
  said: ': no stud goes with the first, and one with the second',
};

/** Sizes that cannot both be: asked whether they stand under each other's name; until then neither counts. */
export function swappedSizes(readings: readonly CountedReading[]): PartDoubt[] {
  const asked = new Set<string>();
  const rollers = swappedPair(
    { small: 'hole-across-trunnion', large: 'roller-diameter' },
    ordered(readings, 'hole-across-trunnion', asked),
    ordered(readings, 'roller-diameter', asked),
    AS_A_ROLLER,
  );
  for (const id of rollers.flatMap(({ restsOn }) => restsOn)) asked.add(id);
  const pairs = PAIRS.flatMap(([small, large]) => {
    const found = swappedPair(
      { small, large },
      ordered(readings, small, asked),
      ordered(readings, large, asked),
    );
    for (const id of found.flatMap(({ restsOn }) => restsOn)) asked.add(id);
    return found;
  });
  return [...rollers, ...pairs];
}

const ARMS = ['pivot-to-cup', 'pivot-to-tip'] as const;
/** As long as a caliper reads both; what is read coarser is not alike for that. */
const AS_LONG = ARMS.reduce((sum, kind) => sum + toolWithin(kind, 'caliper') * IN, 0);

/**
 * Both arms as long as one another: by them the ratio is about one, and one of them stands under the other’s name. One of
 * two that were swapped and was put right alone leaves that. Common practice, no published source.
 */
export function armsAlike(readings: readonly CountedReading[]): PartDoubt[] {
  const [cups, tips] = ARMS.map((kind) => ordered(readings, kind, new Set()));
  const [cup, tip] = [cups?.at(-1), tips?.[0]];
  if (cups === undefined || tips === undefined || cup?.size === undefined || tip?.size === undefined)
    return [];
  if (Math.abs(cup.size - tip.size) > AS_LONG) return [];
  const ids = { cups: cups.map(({ id }) => id).sort(), tips: tips.map(({ id }) => id).sort() };
  const both = [...ids.cups, ...ids.tips];
  const again = 'It does not count; it is read again and entered under its own name.';
  return [
    {
      code: 'arms-alike',
      ask: `Pivot to cup, ${asEntered(cup.readAs)}, and pivot to tip, ${asEntered(tip.readAs)}, are alike: by them the ratio is about 1. Which of them is not its own?`,
      knownBy: 'which arm length is not its own',
      test: 'measure both again: pivot to cup, then pivot to tip',
      restsOn: both,
      among: amongOf(both),
      choices: [
        choice('first-misread', 'The pivot to cup', again),
        choice('second-misread', 'The pivot to tip', again),
        { ...AS_READ, label: 'Both read again: they are as they were read' },
      ],
      effect: (now, chosen) => {
        if (chosen === 'not-found') return now;
        if (chosen === 'first-misread') return without(now, ids.cups);
        return without(now, chosen === 'second-misread' ? ids.tips : both);
      },
    },
  ];
}
