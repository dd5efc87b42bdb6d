import { isWithin } from '../../kit/within.ts';
import type { AssessedQuantity, Headline } from '../assessment.ts';
import type { PartSaid } from '../common/part-said.ts';
import type { Evidence, StopEvidence } from '../evidence.ts';
import type { HeldPeak } from './against-card.ts';
import { countingPeaks } from './counting.ts';
import { shiftSaid } from './pointer-said.ts';
import { questionsOf, type TimingAsked } from './questions.ts';
import {
  degrees,
  isOut,
  isWithinWheel,
  ofSide,
  readOf,
  stopFor,
  type TimingRead,
  WHEEL,
  withoutError,
} from './readings.ts';
import { isOpen, isProved, sentenceOf, type ToldPeak } from './said.ts';

export interface TimingDetail {
  /** Whether every centreline that was kept stands on a top dead centre that was proved. */
  readonly proved: boolean;
  readonly questionIds: readonly string[];
  /** Lobes that stand, or may stand, off the card. */
  readonly offCard: readonly HeldPeak['side'][];
  /** Readings that count with another error of the pointer taken off than was told with them: how much it is. SI. */
  readonly counted: readonly { readonly entryId: string; readonly pointerOff: number }[];
  /** Readings whose figure hangs on what is asked of the pointer. */
  readonly open: readonly string[];
}

/** What was taken off a peak by an answer, beside what was told with it. */
function countedOf(read: TimingRead, peaks: readonly HeldPeak[]): TimingDetail['counted'] {
  return peaks.flatMap(({ id, side, centreline, pointerOff }) => {
    const told = read.peaks.find((each) => each.id === id);
    if (told === undefined || isWithin(told.centreline - centreline, NOTHING)) return [];
    const more = side === 'intake' ? told.centreline - centreline : centreline - told.centreline;
    return [{ entryId: id, pointerOff: (pointerOff ?? 0) + more }];
  });
}

/** Two figures of one peak that differ by no more are one. */
const NOTHING = 0;

/** Said in answer to the question it is the same as said with the reading: neither proves the pointer. */
const saidShifted = (peak: HeldPeak, { pointerWas }: TimingAsked): HeldPeak =>
  pointerWas === 'shifted' && !peak.righted ? { ...peak, shifted: true } : peak;

function headlineOf(told: ToldPeak): Headline {
  const { side } = told.peak;
  return {
    id: `headline:timing:${side}`,
    about: { of: 'side', valve: side },
    step: 'timing',
    sentence: sentenceOf(told),
    quantityId: `timing:centreline:${side}`,
  };
}

/** The stop alone, before any lobe was read. */
function stopHeadline(stop: StopEvidence | undefined, peaks: readonly HeldPeak[]): Headline[] {
  if (stop === undefined || peaks.length > 0) return [];
  return [
    {
      id: 'headline:timing:stop',
      about: { of: 'build' },
      step: 'timing',
      sentence: isOut(stop)
        ? `The pointer is ${degrees(stop.correction)}° out: ${shiftSaid(stop)} of the stop.`
        : 'The stop reads alike both ways: top dead centre is proved.',
    },
  ];
}

function quantityOf(told: ToldPeak): AssessedQuantity {
  const { peak, stop } = told;
  const { side, centreline } = peak;
  const other = stop === undefined || !isOpen(told) ? centreline : withoutError(peak, stop).centreline;
  return {
    id: `timing:centreline:${side}`,
    name: `Centreline of the ${side}`,
    about: { of: 'side', valve: side },
    dimension: 'angle',
    value: centreline,
    low: Math.min(centreline, other) - WHEEL,
    high: Math.max(centreline, other) + WHEEL,
    basis: 'measured',
    conditions: [
      peak.fromEvents ? 'from its events' : 'from equal drop',
      ...(peak.righted && peak.shifted !== true && isOut(stop) ? ['the pointer’s error taken off'] : []),
    ],
    lacks: isProved(told) ? [] : ['top dead centre by a positive stop'],
    restsOn: [],
  };
}

/**
 * What was read of the cam's timing: where each lobe peaks, which gap to the piston that costs, and whether top dead
 * centre was proved for it.
 *
 * @param evidence everything on the record, in SI; of several readings of one lobe the one that was kept last counts
 * @returns the centreline of each lobe with its sentence, and what its readings ask
 *
 * Validity: one camshaft; a wheel on the crank.
 * Source: common practice, no published source; which gap an advance costs by a cam maker’s pages (trade practice 2.8).
 */
export function timingPart(evidence: Evidence): PartSaid<TimingDetail> {
  const read = readOf(evidence);
  const peaks = countingPeaks(read, evidence);
  const asked = questionsOf(read, peaks, evidence);
  const told = peaks.map((each): ToldPeak => {
    const peak = saidShifted(each, asked);
    return { peak, stop: stopFor(read, peak), asked, read: ofSide(read, peak.side) };
  });
  return {
    quantities: told.map(quantityOf),
    judgements: [],
    questions: asked.all,
    stop: [],
    headlines: [...stopHeadline(read.stops.at(-1), peaks), ...told.map(headlineOf)],
    detail: {
      proved: told.every(isProved),
      questionIds: asked.all.map(({ id }) => id),
      offCard: peaks
        .filter(({ mayBe }) => mayBe.some((advance) => !isWithinWheel(advance)))
        .map(({ side }) => side),
      counted: countedOf(read, peaks),
      open: told.filter(isOpen).map(({ peak }) => peak.id),
    },
  };
}
