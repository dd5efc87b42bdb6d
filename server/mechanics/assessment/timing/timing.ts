import type { AssessedQuantity, AssessedQuestion, Headline, Subject } from '../assessment.ts';
import type { PartSaid } from '../common/part-said.ts';
import type { Evidence, PeakEvidence, StopEvidence } from '../evidence.ts';
import { timingQuestions } from './questions.ts';
import { type Lined, readOf, WITHIN } from './read.ts';
import { sentenceOf, unproved } from './said.ts';

export interface TimingDetail {
  /** Whether every centreline that was kept stands on a top dead centre that was proved. */
  readonly proved: boolean;
  readonly questionIds: readonly string[];
}

function headlineOf(
  peak: Lined<PeakEvidence>,
  stops: readonly Lined<StopEvidence>[],
  asked: readonly AssessedQuestion[],
): Headline {
  const about: Subject = { of: 'side', valve: peak.side };
  return {
    id: `headline:timing:${peak.side}`,
    about,
    step: 'timing',
    sentence: sentenceOf(peak, stops, asked),
    quantityId: `timing:centreline:${peak.side}`,
  };
}

function quantityOf(peak: Lined<PeakEvidence>, stops: readonly Lined<StopEvidence>[]): AssessedQuantity {
  const why = unproved(peak, stops);
  return {
    id: `timing:centreline:${peak.side}`,
    name: `Centreline of the ${peak.side}`,
    about: { of: 'side', valve: peak.side },
    dimension: 'angle',
    value: peak.centreline,
    low: peak.centreline - WITHIN,
    high: peak.centreline + WITHIN,
    basis: 'measured',
    conditions: [
      peak.fromEvents ? 'from its events' : 'from equal drop',
      ...(peak.righted ? ['the pointer’s error taken off'] : []),
    ],
    lacks: why === undefined ? [] : ['top dead centre by a positive stop'],
    restsOn: [],
  };
}

/**
 * What was read of the cam's timing: where each lobe peaks, which gap to the piston that costs, and whether top dead
 * centre was proved for it.
 *
 * @param evidence everything on the record, in SI; of several readings of one lobe the one that was kept last counts
 * @returns the centreline of each lobe with its sentence, and what the two ask together
 *
 * Validity: one camshaft; a wheel on the crank.
 * Source: common practice, no published source; which gap an advance costs by a cam maker’s pages (trade practice 2.8).
 */
export function timingPart(evidence: Evidence): PartSaid<TimingDetail> {
  const { stops, peaks, all } = readOf(evidence);
  const questions = timingQuestions(peaks, all, evidence);
  return {
    quantities: peaks.map((peak) => quantityOf(peak, stops)),
    judgements: [],
    questions,
    stop: [],
    headlines: peaks.map((peak) => headlineOf(peak, stops, questions)),
    detail: {
      proved: peaks.every((peak) => unproved(peak, stops) === undefined),
      questionIds: questions.map(({ id }) => id),
    },
  };
}
