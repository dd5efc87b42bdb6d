import {
  isNoiseQuestion,
  NOISE_QUESTIONS,
  type NoiseQuestion,
  noiseAnswerIn,
  noiseQuestionOf,
} from '../../../../shared/schemas/noise.ts';
import { noiseAsks } from '../../noise/noise-words.ts';
import { isAskedAs } from '../common/asked.ts';
import { asItIs, onceEach } from '../common/once.ts';
import type { AnswerEvidence, Evidence, ValvePlace } from '../evidence.ts';

/** In the order of the desk. */
export const QUESTIONS: readonly NoiseQuestion[] = Object.keys(NOISE_QUESTIONS).filter(isNoiseQuestion);

/** An answer to one of the questions about noise, under its own word. */
export interface NoiseSaid {
  readonly entry: AnswerEvidence;
  readonly answer: string;
  /** What was said beside it, word for word. */
  readonly words: string;
}

const isTo = (question: NoiseQuestion, { questionId, code, question: asked }: AnswerEvidence): boolean =>
  questionId === undefined && code === ''
    ? noiseAsks(question).some((ask) => isAskedAs(asked, ask))
    : noiseQuestionOf(questionId, code) === question;

const saidAmong = onceEach(
  asItIs,
  (answers: Evidence['answers'], question: NoiseQuestion): readonly NoiseSaid[] =>
    answers
      .filter((entry) => isTo(question, entry))
      .toSorted((a, b) => a.line - b.line)
      .flatMap((entry) => {
        const answer = noiseAnswerIn(question, entry.answer);
        if (answer === undefined) return [];
        return [
          {
            entry,
            answer,
            words: entry.answer
              .trim()
              .slice(answer.length)
              .replace(/^[\s:;,.]+/, ''),
          },
        ];
      }),
);

/** Every answer to the question, in the order in which they were given. */
export const saidTo = (
  question: NoiseQuestion,
  { answers }: Pick<Evidence, 'answers'>,
): readonly NoiseSaid[] => saidAmong(answers, question);

/** The one that counts: said again it puts right what was said before. */
export const lastSaid = (
  question: NoiseQuestion,
  evidence: Pick<Evidence, 'answers'>,
): NoiseSaid | undefined => saidTo(question, evidence).at(-1);

/** Signs that were told since it was last said that there are none; each counts beside the others. */
export function signsNow(evidence: Pick<Evidence, 'answers'>): NoiseSaid[] {
  const all = saidTo('noise-signs', evidence);
  const since = all.slice(all.findLastIndex(({ answer }) => answer === 'none') + 1);
  const told = since.filter(({ answer }) => answer !== 'not-known');
  return told.filter(({ answer }, index) => told.findIndex((each) => each.answer === answer) === index);
}

/** Every one of these entries that answered a question about noise was put right since: the question has another answer now. */
export function allPutRight(ids: readonly string[], evidence: Pick<Evidence, 'answers'>): boolean {
  const own = QUESTIONS.filter((question) =>
    saidTo(question, evidence).some(({ entry }) => ids.includes(entry.id)),
  );
  const now = own.flatMap((question) =>
    question === 'noise-signs' ? signsNow(evidence) : (lastSaid(question, evidence) ?? []),
  );
  return own.length > 0 && !now.some(({ entry }) => ids.includes(entry.id));
}

/** The one valve that it is, where that was told. */
export function noisyValve(evidence: Pick<Evidence, 'answers'>): ValvePlace | undefined {
  const said = lastSaid('noise-which', evidence);
  return said?.answer === 'one' ? said.entry.place : undefined;
}
