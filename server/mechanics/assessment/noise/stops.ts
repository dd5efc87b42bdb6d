import { defined } from '../../../../shared/defined.ts';
import type { NoiseQuestion } from '../../../../shared/schemas/noise.ts';
import { adjusterKind, firstAtGrowth } from '../../lash/adjuster-words.ts';
import { noiseWords } from '../../noise/noise-words.ts';
import type { StopReason } from '../assessment.ts';
import { lowerFirst, valveSubject } from '../common/said.ts';
import { SHOP_LOOKS } from '../common/way-out.ts';
import type { Evidence } from '../evidence.ts';
import { type NoiseSaid, noisyValve, QUESTIONS, saidTo } from './answers.ts';
import { SIGNS, type Sign, whySaid, wordsTellDamage } from './damage.ts';

/** Whether this answer stops it: for the words beside the answer. */
export const stopsIt = (question: NoiseQuestion, answer: string): boolean =>
  SIGNS.some((sign) => sign.question === question && sign.answer === answer);

/** Of the whole engine, whichever valve makes the noise. */
const OF_BUILD: readonly NoiseQuestion[] = ['noise-signs'];

function stopBy(
  evidence: Evidence,
  { question, code, first }: Pick<Sign, 'question' | 'code' | 'first'>,
  told: readonly NoiseSaid[],
  { id, why }: { readonly id: string; readonly why: string },
): StopReason[] {
  const newest = told.at(-1);
  const place = noisyValve(evidence);
  if (newest === undefined) return [];
  return [
    {
      id,
      code,
      about: place === undefined || OF_BUILD.includes(question) ? { of: 'build' } : valveSubject(place),
      sentence: `Do not turn it: ${why}.`,
      why,
      ...SHOP_LOOKS,
      ...defined({
        first: code === 'lash-grew-again' ? firstAtGrowth(adjusterKind(evidence.engine)) : first,
      }),
      from: 'person',
      answered: true,
      entryId: newest.entry.id,
      line: newest.entry.line,
      restsOn: told.map(({ entry }) => entry.id).sort(),
    },
  ];
}

const idOf = ({ code, question, answer }: Sign): string =>
  code === 'part-damaged' ? `stop:${code}:${question}:${answer}` : `stop:${code}:${answer}`;

/** Words beside an answer that does not stop it by itself: they are the caller's own, and are told as they are. */
function byWords(evidence: Evidence, question: NoiseQuestion): StopReason[] {
  const told = saidTo(question, evidence).filter(
    ({ answer, words }) => !stopsIt(question, answer) && wordsTellDamage(question, words),
  );
  const words = told.at(-1)?.words ?? '';
  const sign = { question, code: 'part-damaged' } as const;
  return stopBy(evidence, sign, told, {
    id: `stop:part-damaged:${question}:words`,
    why: `“${words}” was said of the ${lowerFirst(noiseWords(question, adjusterKind(evidence.engine)).name)}`,
  });
}

/**
 * A sign of damage that was told stops it at once, and telling otherwise later does not take that away: only the desk
 * lifts it, with what was found. What the words beside an answer tell counts as well as the answer.
 */
export function noiseStops(evidence: Evidence): StopReason[] {
  const signs = SIGNS.flatMap((sign) => {
    const told = saidTo(sign.question, evidence).filter((each) => each.answer === sign.answer);
    return stopBy(evidence, sign, told, { id: idOf(sign), why: whySaid(sign, evidence) });
  });
  return [...signs, ...QUESTIONS.flatMap((question) => byWords(evidence, question))];
}
