import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import type { Assessment, StopReason } from '../../../../server/mechanics/assessment/assessment.ts';
import type { Evidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { stopsOf } from '../../../../server/mechanics/assessment/stops-of.ts';
import { tellsToTurn } from '../../../tools/tells-to-turn.ts';
import { type Law, sentencesOf } from './law.ts';

import { STOP_CODES, withStop } from './with-stop.ts';

/** A gap that is short raises a stop, until a person has lifted it; one that is only calculated is not to be run. */
function shortWithoutStop({ call }: Evidence, { judgements, notToRun }: Assessment): string[] {
  if ((call.stopsLifted ?? []).length > 0 || notToRun.length > 0) return [];
  // A part on the bench that is too wide for its cover stops no engine.
  const gaps = judgements.filter(({ word, about }) => word === 'short' && about.of !== 'part');
  return gaps.map(({ id }) => `${id}: short, and no stop stands`);
}

/** Every sentence that a face may show under a stop. */
function saidIn(assessment: Assessment): string[] {
  const { questions, notToRun, explanations, details, judgements, missing } = assessment;
  return [
    ...sentencesOf(assessment),
    ...missing.map(({ sentence }) => sentence),
    ...judgements.flatMap(({ lacks }) => lacks),
    ...questions.flatMap(({ ask, size = '', test }) => [ask, size, test]),
    ...notToRun.flatMap(({ sentence, wayOut }) => [sentence, wayOut]),
    ...explanations.flatMap(({ summary, refused = '' }) => [summary, refused]),
    ...details.change.map(({ adjusters }) => adjusters),
    ...details.noise.checks.map(({ sentence }) => sentence),
    ...details.noise.candidates.flatMap((each) => [...each.for, ...each.against].map(({ text }) => text)),
    ...details.noise.questions.flatMap(({ ask, test, answers }) => [
      ask,
      test,
      ...answers.flatMap(({ label, changes }) => [label, changes]),
    ]),
  ];
}

/** A way out says who lifts it and, where a reading raised it, that the desk may strike that reading out. */
function wayOutOf({ id, from, sentence, wayOut }: StopReason): string[] {
  const complete =
    /\bdesk\b/.test(wayOut) &&
    (from === 'person' || /(strikes out a wrong reading|lifts the stop), with the reason/.test(wayOut));
  return sentence === '' || !complete ? [`${id}: not said why, or no way out: ${wayOut}`] : [];
}

function brokenBy(evidence: Evidence, assessment: Assessment): string[] {
  const { stop, next } = assessment;
  const alone = JSON.stringify(stopsOf(evidence)) === JSON.stringify(stop);
  return [
    ...(next === undefined || next.turns ? [`next under a stop: ${next?.sentence ?? 'nothing'}`] : []),
    ...saidIn(assessment)
      .flatMap(tellsToTurn)
      .map((sentence) => `under a stop: ${sentence}`),
    ...stop.flatMap(wayOutOf),
    ...(alone ? [] : ['the stops by themselves are others than those of the assessment']),
  ];
}

/** The same build with one more reason to stop: which one, its number decides. */
function stoppedToo(seed: number, evidence: Evidence): string[] {
  const code = STOP_CODES[seed % STOP_CODES.length] ?? 'held';
  const stopped = withStop(evidence, code);
  const assessment = assess(stopped);
  const raised = assessment.stop.some((each) => each.code === code);
  return [
    ...(raised ? [] : [`${code} is raised, and no stop stands`]),
    ...brokenBy(stopped, assessment).map((fault) => `stopped by ${code}: ${fault}`),
  ];
}

/** Law 9: a stop is a stop: nothing next turns it, no sentence sends anybody to, and tests that turn it wait. */
export const aStopIsAStop: Law = ({ seed, evidence, assessment }) => {
  const { stop } = assessment;
  const lifted = (evidence.call.stopsLifted ?? []).map(({ stopId }) => stopId);
  const hit = evidence.call.contact === 'something' && !lifted.includes('stop:contact');
  const held = evidence.call.hold !== undefined || hit;
  return [
    ...(held && stop.length === 0 ? ['held, or something hit, and no stop stands'] : []),
    ...(stop.length === 0 ? shortWithoutStop(evidence, assessment) : brokenBy(evidence, assessment)),
    ...stoppedToo(seed, evidence),
  ];
};
