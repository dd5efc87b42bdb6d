import type { Headline } from '../../../../server/mechanics/assessment/assessment.ts';
import { planOf } from '../../../../shared/schemas/goals.ts';
import type { Law } from './law.ts';

/** What a headline asks for first: `a reading at zero lash`. */
function firstOf({ sentence }: Headline): string[] {
  const [, found] = /\bFirst: (.+?)(?:\.(?: [A-Z]|$)|\?)/.exec(sentence) ?? [];
  return found === undefined ? [] : [found.toLowerCase()];
}

/**
 * Asked before what was read is gone on with; a scan or a set-up that was begun has its own first, and where the lobe is
 * the card's it is the card that is asked for. A gap that comes out short is measured before what only waits for a word.
 */
const BEFORE =
  /^next:(triage|noise|not-to-run|sheet|scan|parts:planned|consequences:gap-short|cam:lobe-lift|ratio:(valve|lobe)-passes)|^next:question/;

/** A headline names the thing, what is next says what to do. */
const WAYS: readonly (readonly [RegExp, string])[] = [
  [
    /^enter (pass(?:es)? [\d, and]+(?: of the lobe)?) of [^:]* again, or strike (?:it|them) out with the reason:/,
    '$1 entered again or struck out:',
  ],
  [/^read the (lobe|valve) lift of .*/, 'a pass of the $1 lift'],
];
const asThing = (sentence: string): string =>
  WAYS.reduce((said, [way, thing]) => said.replace(way, thing), sentence.toLowerCase());

/**
 * Law 6: where what the call is about waits for something, what is next is what its headline asks for first. A doubt of
 * another reading, and what is asked before anything is read, may go before it.
 */
export const headlineAndNextAskTheSame: Law = ({ assessment, evidence }) => {
  const { next, headlines, stop } = assessment;
  const { goal, closed } = evidence.call;
  if (next === undefined || closed || stop.length > 0 || BEFORE.test(next.id)) return [];
  const steps = [...planOf(goal).asks];
  const own = headlines.filter(({ step }) => steps.includes(step));
  const asked = own.flatMap(firstOf);
  const said = `${asThing(next.sentence)} ${next.reason.toLowerCase()}`;
  return asked.length === 0 || asked.some((first) => said.includes(first))
    ? []
    : [`${goal}: next is “${next.sentence}”, and the headlines ask first for ${asked.join(' | ')}`];
};
