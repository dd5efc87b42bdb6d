import type { AnswerEvidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { answersTo, isNoiseQuestion, NOISE_QUESTIONS } from '../../../../shared/schemas/noise.ts';
import type { Chance } from '../../explain-readings/random.ts';

const QUESTIONS = Object.keys(NOISE_QUESTIONS).filter(isNoiseQuestion);

/** What is told of noise or a failure on some of the calls, now and then twice: the later one puts it right. */
export function noiseAnswersOf(chance: Chance): AnswerEvidence[] {
  if (chance.happens(0.85)) return [];
  const told = QUESTIONS.filter(() => chance.happens(0.5));
  const again = told.filter(() => chance.happens(0.25));
  return [...told, ...again].map((code, index): AnswerEvidence => {
    const answer = chance.pick(Object.keys(answersTo(code)));
    const place = { cylinder: chance.pick([1, 2, 3, 6]), valve: chance.pick(['intake', 'exhaust'] as const) };
    return {
      id: `noise-${index + 1}`,
      // Behind whatever else was answered.
      line: 1000 + index,
      code,
      question: NOISE_QUESTIONS[code].ask,
      answer,
      ...(code === 'noise-which' && answer === 'one' && chance.happens(0.8) ? { place } : {}),
      ...(chance.happens(0.5) ? { questionId: `question:${code}:build` } : {}),
    };
  });
}
