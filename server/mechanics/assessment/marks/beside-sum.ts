import { allowance } from '../../kit/allowances.ts';
import { inchesSaid, toldOver } from '../../tip-mark/length-said.ts';
import type { LengthOver } from '../../tip-mark/types.ts';
import type { Assessment, Headline, NextAction } from '../assessment.ts';
import { lastKept } from '../common/kept.ts';
import { listed, placeOf, upperFirst } from '../common/said.ts';
import type { PushrodEvidence } from '../evidence/kept-sums.ts';
import type { Evidence } from '../evidence.ts';
import type { MarkedValveDetail, MarksDetail, WhyNoLength } from './detail.ts';

/** The figure of a kept pushrod length: its headline rests on it, and it lacks nothing while it counts. */
const OF_SUM = 'working:pushrod';
const OF_STAND = 'working:stand';

/** A sum and a mark that are nearer than this are of one length. */
const ONE_LENGTH = allowance('pushrod-at-mark');
/** A lash that was taken off at the pushrod is seldom more. */
const MOST_LASH = allowance('lash-off-pushrod');

const SUM_OVER: Readonly<Record<PushrodEvidence['told'], LengthOver | undefined>> = {
  'as-read': undefined,
  overall: 'ends',
  effective: 'gauge',
};

/**
 * The sum was made at another length than the one that the marks let stay.
 *
 * Equation: |length − added − mark| > half a step of stock, and what is between two ways of telling a length, or a lash
 * that was taken off, where either is not known
 */
function isElsewhere(
  { length, added = 0, lashOff, told }: PushrodEvidence,
  { at, over }: Pick<Staying, 'at' | 'over'>,
): boolean {
  const sumOver = SUM_OVER[told];
  const known = over !== undefined && sumOver !== undefined;
  const mark = known ? toldOver(at, over, sumOver) : at;
  const unsaid = known ? 0 : toldOver(0, 'gauge', 'ends');
  const off = length - added - mark;
  return Math.abs(off) > ONE_LENGTH + unsaid + (lashOff === true ? MOST_LASH : 0);
}

const marksOf = (valves: readonly MarkedValveDetail[]): string =>
  `the mark${valves.length > 1 ? 's' : ''} of ${listed(valves.map(placeOf))}`;

interface Staying {
  readonly valve: MarkedValveDetail;
  readonly at: number;
  readonly over: LengthOver | undefined;
}

const stayingOf = (valve: MarkedValveDetail): Staying[] => {
  const { length } = valve;
  return length?.how === 'stays' && length.at !== undefined
    ? [{ valve, at: length.at, over: length.over }]
    : [];
};

/** Where marks let several lengths stay, the sum is of those that it was worked out at; the others are other pushrods. */
function staysSaid(sum: PushrodEvidence, staying: readonly Staying[]): string | undefined {
  const fits = staying.filter((each) => !isElsewhere(sum, each));
  const others = staying.filter((each) => isElsewhere(sum, each)).map(({ valve }) => valve);
  const [first] = fits;
  if (first === undefined) {
    const [other] = staying;
    return other === undefined
      ? undefined
      : `It was worked out at another length than the ${inchesSaid(other.at)} that ${marksOf([other.valve])} lets stay, and the mark holds: work it out again from there, and order none until then.`;
  }
  const isChanged = (sum.added ?? 0) > 0 || sum.lashOff === true;
  const of = others.length === 0 ? '' : ` for ${listed(fits.map(({ valve }) => placeOf(valve)))}`;
  const said = [
    ...(isChanged
      ? [
          `That is the one to order${of}; the ${inchesSaid(first.at)} of ${marksOf([first.valve])} is the checker, without what the adjustment ${sum.lashOff === true ? 'takes off' : 'adds'}.`,
        ]
      : []),
    ...(others.length === 0
      ? []
      : [
          `${upperFirst(marksOf(others))} let${others.length > 1 ? '' : 's'} another length stay, and want${others.length > 1 ? '' : 's'} a sum of ${others.length > 1 ? 'their' : 'its'} own.`,
        ]),
  ];
  return said.length === 0 ? undefined : said.join(' ');
}

type OpenSaid = (valves: readonly MarkedValveDetail[]) => string;

const ofThese = (valves: readonly MarkedValveDetail[]): string => listed(valves.map(placeOf));

/** Why no length may stay yet, as it goes on from the length that the checker comes to. */
const OPEN_SAID: Readonly<Record<WhyNoLength, OpenSaid>> = {
  try: (of) =>
    `what ${marksOf(of)} ask${of.length > 1 ? '' : 's'} for next is only a length to try, and goes first`,
  stem: (of) => `how thick the stem of ${ofThese(of)} is has to be said first`,
  edge: (of) =>
    `whether ${marksOf(of)} stay${of.length > 1 ? '' : 's'} on the stem has to be looked at first`,
  over: (of) => `over what the lengths at ${ofThese(of)} were taken has to be said first`,
  apart: (of) => `of ${marksOf(of)} it is not known which holds`,
  sideways: (of) =>
    `${marksOf(of)} stand${of.length > 1 ? '' : 's'} off sideways, and the rocker is brought square first`,
  contradict: (of) => `at ${ofThese(of)} one mark contradicts the other, and none lets a length stay`,
  width: (of) => `the width at ${ofThese(of)} has no word yet, and goes before any length`,
  heights: (of) => `no length makes ${marksOf(of)} ordinary`,
  unlike: (of) => `${marksOf(of)} ask for unlike lengths, and what differs goes first`,
};

const whyOf = ({ length }: MarkedValveDetail): WhyNoLength[] =>
  length?.how === 'open' ? [length.because] : [];

function openSaid(valves: readonly MarkedValveDetail[]): string | undefined {
  const whys = [...new Set(valves.flatMap(whyOf))];
  if (whys.length === 0) return undefined;
  const each = whys.map((why) => OPEN_SAID[why](valves.filter((valve) => whyOf(valve).includes(why))));
  return `That is the length to order by the checker; ${each.join('; ')}: order none until a mark may stay.`;
}

/** What the length of the checker and the length that the marks ask for are to each other, and which holds. */
function besideSaid(sum: PushrodEvidence, valves: readonly MarkedValveDetail[]): string | undefined {
  const open = openSaid(valves);
  if (open !== undefined) return open;
  return staysSaid(sum, valves.flatMap(stayingOf));
}

/** The kept pushrod length, where it counts. */
function sumOf(quantities: Assessment['quantities'], evidence: Evidence): PushrodEvidence | undefined {
  const counts = quantities.some(({ id, lacks }) => id === OF_SUM && lacks.length === 0);
  return counts ? lastKept(evidence, 'pushrod')?.set : undefined;
}

/** A sum that was made at another length than every mark that holds is made again, before anything is ordered. */
export function sumAgainNext(
  { quantities }: Pick<Assessment, 'quantities'>,
  { valves, stand }: MarksDetail,
  evidence: Evidence,
): NextAction | undefined {
  const sum = stand === undefined ? sumOf(quantities, evidence) : undefined;
  const staying = valves.flatMap(stayingOf);
  const [first] = staying;
  if (sum === undefined || first === undefined || staying.some((each) => !isElsewhere(sum, each)))
    return undefined;
  if (valves.some(({ length }) => length?.how === 'open')) return undefined;
  return {
    id: 'next:geometry:pushrod-sum',
    action: 'pushrod-sum',
    step: 'geometry',
    about: { of: 'build' },
    sentence: `Work the pushrod length out again from the ${inchesSaid(first.at)} that ${marksOf([first.valve])} lets stay; order none until then.`,
    reason: 'The sum was made at another length, and the mark holds.',
    turns: false,
  };
}

/**
 * The kept pushrod length with what it is beside the lengths that the marks ask for: a mark goes before the sum, because the
 * sum is made with the mark in its place.
 *
 * Source: `pushrod-length` holds with the tip’s mark in its place; order by common practice, no published source.
 */
export function besideMarks(
  { headlines, quantities }: Pick<Assessment, 'headlines' | 'quantities'>,
  { valves, stand }: MarksDetail,
  evidence: Evidence,
): readonly Headline[] {
  if (stand !== undefined)
    return headlines.map((each) =>
      each.quantityId === OF_STAND
        ? { ...each, sentence: `Nothing is told of this height yet. ${stand.said}` }
        : each,
    );
  const sum = sumOf(quantities, evidence);
  const said = sum === undefined ? undefined : besideSaid(sum, valves);
  if (said === undefined) return headlines;
  return headlines.map((each) =>
    each.quantityId === OF_SUM ? { ...each, sentence: `${each.sentence} ${said}` } : each,
  );
}
