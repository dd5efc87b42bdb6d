import { type Law, sentencesOf } from './law.ts';

/** Words that send somebody to turn, run or fire it. */
const TELLS =
  /(^|[.:;?] )(turn (it|to|by|twice)|rotate|crank|fire|start it|run it|take one more pass|read (it )?again|read the (valve|lobe)|move (this|the) rocker|swap )/i;
const FORBIDS = /do not|don’t|nobody|not while|until|after it|before anything/i;

/** Law 9: a stop is a stop: nothing next turns it, no sentence sends anybody to, and tests that turn it wait. */
export const aStopIsAStop: Law = ({ evidence, assessment }) => {
  const { stop, next, questions } = assessment;
  const held = evidence.call.hold !== undefined || evidence.call.contact === 'something';
  const missing = held && stop.length === 0 ? ['held, or something hit, and no stop stands'] : [];
  if (stop.length === 0) return missing;
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
