import { defined } from '../../../../shared/defined.ts';
import { NOT_KNOWN, type NoiseQuestion } from '../../../../shared/schemas/noise.ts';
import { type AdjusterKind, adjusterKind } from '../../lash/adjuster-words.ts';
import type { CauseName } from '../../noise/causes.ts';
import { effectOf } from '../../noise/effects.ts';
import { causeSaid, type NoiseWords, noiseWords } from '../../noise/noise-words.ts';
import type { AnswerChoice, AssessedQuestion, Subject } from '../assessment.ts';
import { listed, valveSubject } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { lastSaid, noisyValve, QUESTIONS } from './answers.ts';
import { stopsIt } from './stops.ts';

export const questionId = (question: NoiseQuestion): string => `question:${question}:build`;

const causesSaid = (label: string, causes: readonly CauseName[], kind: AdjusterKind): string[] =>
  causes.length === 0 ? [] : [`${label} ${listed(causes.map((cause) => causeSaid(cause, kind)))}.`];

function changesBy(question: NoiseQuestion, answer: string, kind: AdjusterKind): string {
  if (stopsIt(question, answer)) return 'Nobody turns it from then on, until the desk lifts the stop.';
  const effect = effectOf(question, answer);
  const said = [
    ...causesSaid('Speaks for', effect.for, kind),
    ...causesSaid('Speaks against', effect.against, kind),
  ];
  if (said.length > 0) return said.join(' ');
  return answer === NOT_KNOWN
    ? question === 'noise-signs'
      ? 'It is kept; the filter is opened and looked at before anything is turned.'
      : 'It is kept, and not asked again.'
    : 'It is kept; it points to no cause.';
}

const choicesOf = (question: NoiseQuestion, { answers }: NoiseWords, kind: AdjusterKind): AnswerChoice[] =>
  Object.entries(answers).map(([code, label]) => ({
    code,
    label,
    changes: changesBy(question, code, kind),
    ...(question === 'noise-which' && code === 'one' ? { takesValve: true } : {}),
  }));

/** Asked of the whole engine, whichever valve makes the noise. */
const OF_ENGINE: readonly NoiseQuestion[] = ['noise-signs', 'noise-which', 'noise-oil'];

/** What is asked about noise, as every question of the assessment is; none of it takes turning. */
export function noiseQuestions(evidence: Evidence): AssessedQuestion[] {
  const place = noisyValve(evidence);
  const about: Subject = place === undefined ? { of: 'build' } : valveSubject(place);
  const kind = adjusterKind(evidence.engine);
  return QUESTIONS.map((code) => {
    const said = lastSaid(code, evidence);
    const words = noiseWords(code, kind);
    return {
      id: questionId(code),
      code,
      about: OF_ENGINE.includes(code) ? { of: 'build' } : about,
      step: 'noise',
      weight: 'weak',
      ask: words.ask,
      test: words.test,
      byLooking: true,
      answers: choicesOf(code, words, kind),
      ...defined({
        answered: said === undefined ? undefined : { entryId: said.entry.id, answer: said.entry.answer },
      }),
      restsOn: [],
    };
  });
}
