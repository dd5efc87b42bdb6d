import type { Assessment } from '../../../../server/mechanics/assessment/assessment.ts';
import type { Evidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { type Law, sentencesOf } from './law.ts';

/** Words that send somebody to turn, run or fire it. */
const TELLS =
  /(^|[.:;?] )(turn (it|to|by|twice)|rotate|crank|fire|start it|run it|take one more pass|read (it )?again|read the (valve|lobe)|move (this|the) rocker|swap (?!of ))/i;
const FORBIDS = /do not|don’t|nobody|not while|until|after it|before anything/i;

/** A gap that is short raises a stop, until a person has lifted it; one that is only calculated is not to be run. */
function shortWithoutStop({ call }: Evidence, { judgements, notToRun }: Assessment): string[] {
  if ((call.stopsLifted ?? []).length > 0 || notToRun.length > 0) return [];
  // A part on the bench that is too wide for its cover stops no engine.
  const gaps = judgements.filter(({ word, about }) => word === 'short' && about.of !== 'part');
  return gaps.map(({ id }) => `${id}: short, and no stop stands`);
}

/** Law 9: a stop is a stop: nothing next turns it, no sentence sends anybody to, and tests that turn it wait. */
export const aStopIsAStop: Law = ({ evidence, assessment }) => {
  const { stop, next, questions } = assessment;
  const lifted = (evidence.call.stopsLifted ?? []).map(({ stopId }) => stopId);
  const hit = evidence.call.contact === 'something' && !lifted.includes('stop:contact');
  const held = evidence.call.hold !== undefined || hit;
  const missing = held && stop.length === 0 ? ['held, or something hit, and no stop stands'] : [];
  if (stop.length === 0) return [...missing, ...shortWithoutStop(evidence, assessment)];
  const { missing: _, ...rest } = assessment;
  return [
    ...(next === undefined || next.turns ? [`next under a stop: ${next?.sentence ?? 'nothing'}`] : []),
    ...sentencesOf({ ...rest, missing: [] })
      .filter((sentence) => TELLS.test(sentence) && !FORBIDS.test(sentence))
      .map((sentence) => `under a stop: ${sentence}`),
    ...questions
      .filter(({ test }) => TELLS.test(test) && !FORBIDS.test(test))
      .map(({ id, test }) => `${id}: under a stop: ${test}`),
    ...stop
      .filter(({ sentence, wayOut }) => sentence === '' || wayOut === '')
      .map(({ id }) => `${id}: not said why`),
  ];
};
