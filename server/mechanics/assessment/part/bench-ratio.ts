import { InputFaults } from '../../../../shared/problems/faults.ts';
import { computation as armLengths } from '../../computations/arm-lengths.ts';
import { halfWidthOf } from '../../identify/how-read.ts';
import { standTogether } from '../../identify/likelihood.ts';
import { IDENTIFICATION_MODEL } from '../../identify/model.ts';
import { COMMON_NOMINALS } from '../../questions/tolerances.ts';
import type { AssessedQuantity, Headline, PartSubject } from '../assessment.ts';
import { listed, nominalSaid, subjectSaid, upperFirst } from '../common/said.ts';
import type { BenchRatioDetail } from './detail.ts';
import { type CountedReading, sized } from './doubts.ts';
import type { ToldRatio } from './ratio-told.ts';
import { asReadSize } from './read-size.ts';
import { nameOf, sizeWithin } from './size-said.ts';

type ArmKind = 'pivot-to-tip' | 'pivot-to-cup';

interface Arm {
  readonly value: number;
  readonly errorLimit: number;
  readonly ids: readonly string[];
  readonly guess: boolean;
}

/** The middle of the readings with the widest half-width, and no less than they are apart. */
function armOf(readings: readonly CountedReading[], kind: ArmKind): Arm | 'apart' | undefined {
  const own = sized(readings, kind);
  if (own.length === 0) return undefined;
  if (!standTogether(IDENTIFICATION_MODEL.sizes[kind], kind, own.map(asReadSize))) return 'apart';
  const [low, high] = [Math.min(...own.map(({ size }) => size)), Math.max(...own.map(({ size }) => size))];
  return {
    value: own.reduce((sum, { size }) => sum + size, 0) / own.length,
    errorLimit: Math.max((high - low) / 2, ...own.map(halfWidthOf)),
    ids: own.map(({ id }) => id),
    guess: own.some(({ tool }) => tool === 'guess'),
  };
}

/** Two places: the arms of a loose part give no third. The interval is rounded outward. */
const PLACES = 100;
const twoPlaces = (ratio: number, round: (value: number) => number): string =>
  (round(Number((ratio * PLACES).toPrecision(10))) / PLACES).toFixed(2);

/** A narrow interval carries a third place: rounded to two it would seem to reach names that it does not. */
const NARROW = 0.06;

const endsSaid = (low: number, high: number): readonly [string, string] =>
  high - low < NARROW
    ? [low.toFixed(3), high.toFixed(3)]
    : [twoPlaces(low, Math.floor), twoPlaces(high, Math.ceil)];

/** What box and stamp say is within it, or it is not; neither of the two proves the other. */
const againstTold = (told: readonly ToldRatio[], low: number, high: number): string =>
  told
    .map(
      ({ ratio, by }) =>
        ` ${by} ${nominalSaid(ratio)}: that is ${ratio >= low && ratio <= high ? 'within it' : 'outside it'}.`,
    )
    .join('');

/** What the arms of a loose part cannot tell; the same whatever they are. */
const ESTIMATE = 'It is a bench estimate and settles no mark: the ratio is unknown until a valve moves.';

function computed(tip: Arm, cup: Arm): ReturnType<typeof armLengths.compute> | string {
  try {
    const { value, errorLimit } = tip;
    return armLengths.compute({
      pivotToTip: { value, errorLimit },
      pivotToCup: { value: cup.value, errorLimit: cup.errorLimit },
    });
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    return `No ratio from these arms: ${sizeWithin(tip.value, tip.errorLimit)} and ${sizeWithin(cup.value, cup.errorLimit)} leave too much open. Read both with a caliper.`;
  }
}

interface BenchRatio {
  readonly detail: BenchRatioDetail;
  readonly quantity?: AssessedQuantity;
}

/** The ratio of two arm lengths with its interval and the nominals within it; never set against a mark. */
export function benchRatioOf(
  part: { readonly about: PartSubject; readonly key: string },
  readings: readonly CountedReading[],
  catalogueRatios: readonly number[],
  told: readonly ToldRatio[] = [],
): BenchRatio | undefined {
  const [tip, cup] = [armOf(readings, 'pivot-to-tip'), armOf(readings, 'pivot-to-cup')];
  const apart = (['pivot-to-tip', 'pivot-to-cup'] as const).filter((_, at) => [tip, cup][at] === 'apart');
  if (tip === undefined || cup === undefined) return undefined;
  if (tip === 'apart' || cup === 'apart')
    return {
      detail: {
        entryIds: [],
        lacks: `No ratio from the arms yet: the readings of ${listed(apart.map(nameOf))} are too far apart. Say which is right.`,
      },
    };
  const entryIds = [...tip.ids, ...cup.ids];
  const result = computed(tip, cup);
  if (typeof result === 'string') return { detail: { entryIds, lacks: result } };
  const {
    ratio,
    interval95: [low, high],
  } = result;
  const all = [...new Set([...COMMON_NOMINALS, ...catalogueRatios])].sort((a, b) => a - b);
  const inReach = all.filter((nominal) => nominal >= low && nominal <= high);
  const reach =
    inReach.length === 0
      ? 'no usual ratio is within it'
      : `within it ${inReach.length === 1 ? 'is' : 'are'} ${listed(inReach.map(nominalSaid))}`;
  const id = `${part.key}:bench-ratio`;
  const about = twoPlaces(ratio, Math.round);
  const [from, to] = endsSaid(low, high);
  return {
    quantity: {
      id,
      name: 'Bench estimate of the ratio, by arm lengths',
      about: part.about,
      dimension: 'ratio',
      value: ratio,
      low,
      high,
      basis: 'calculated',
      conditions: ['off the engine', 'arm lengths between centres'],
      lacks: [],
      restsOn: [...entryIds].sort(),
    },
    detail: {
      entryIds,
      quantityId: id,
      ratio,
      low,
      high,
      inReach,
      value: about,
      interval: `${from} to ${to}`,
      sentence: `By its arm lengths${tip.guess || cup.guess ? ', one of them guessed,' : ''} the ratio is about ${about}, ${from} to ${to}; ${reach}.${againstTold(told, low, high)} ${ESTIMATE}`,
    },
  };
}

/** A ratio by two lengths is told as what it is: an estimate off the engine. */
export function benchHeadline(
  { about, key }: { readonly about: PartSubject; readonly key: string },
  bench: BenchRatio | undefined,
): Headline[] {
  if (bench?.detail.lacks !== undefined || bench?.detail.sentence === undefined) return [];
  const of = about.name === undefined ? '' : `${upperFirst(subjectSaid(about))}: `;
  return [
    { id: `headline:${key}:bench-ratio`, about, step: 'identify', sentence: `${of}${bench.detail.sentence}` },
  ];
}
