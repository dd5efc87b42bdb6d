import { defined } from '../../../../shared/defined.ts';
import { questionsFor } from '../../questions/questions.ts';
import type { AssessedQuestion, Subject } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { inches } from '../common/said.ts';
import type { AnswerEvidence, Evidence } from '../evidence.ts';
import { answerTo, foundBy, passNamed } from './answers.ts';
import { choicesOf } from './choices.ts';
import { questionInput } from './question-input.ts';
import type { SetUpRead } from './set-up-read.ts';
import type { SetUpNow } from './set-ups.ts';

export const setUpSubject = ({ cylinder, valve, id, number }: SetUpNow): Subject => ({
  of: 'set-up',
  cylinder,
  valve,
  setUpId: id,
  number,
});

/** Found on one pass: so it is while that pass is among those that do not fit, else it was put right since. */
function foundOn(
  { standing }: SetUpRead,
  { restsOn }: AssessedQuestion,
  answer: AnswerEvidence,
): boolean | undefined {
  const number = passNamed(answer);
  if (number === undefined) return foundBy(answer);
  return standing.some(({ id, pass }) => pass === number && restsOn.includes(id));
}

/** The questions of a set-up, each with the answer it has. */
function questionsOf(evidence: Evidence, own: SetUpRead, all: readonly SetUpRead[]): AssessedQuestion[] {
  const about = setUpSubject(own.setUp);
  const questions = questionsFor(questionInput(evidence, own, all)).map((doubt) =>
    asked(doubt, { about, step: 'ratio', answers: [], choices: choicesOf(evidence, own, doubt) }),
  );
  return questions.map((question) => {
    const answer = answerTo(question, questions, own.setUp.answers);
    if (answer === undefined) return question;
    const found = foundOn(own, question, answer);
    const { id: entryId, value } = answer;
    const text = value === undefined ? answer.answer : `${answer.answer}, ${inches(value)}`;
    return {
      ...question,
      answered: { entryId, answer: text, ...defined({ found }) },
    };
  });
}

/** What is known now raises it no more: it stays with its answer, and nothing is in doubt by it. */
function noLongerRaised(question: AssessedQuestion): AssessedQuestion {
  const { answered, ...rest } = question;
  if (answered === undefined) return question;
  const { entryId, answer } = answered;
  return { ...rest, weight: 'weak', answered: { entryId, answer } };
}

/**
 * What a set-up is asked as it is known now. A question that its own answer has settled is kept with the answer, though
 * it would not be asked any more.
 */
export function questionsOfSetUp(
  evidence: Evidence,
  own: SetUpRead,
  all: readonly SetUpRead[],
): AssessedQuestion[] {
  const now = questionsOf(evidence, own, all);
  if (own.setUp.answers.length === 0) return now;
  const said = evidence.setUps.find(({ id }) => id === own.setUp.id);
  if (said === undefined) return now;
  const before = questionsOf(evidence, { ...own, setUp: { ...own.setUp, ...said } }, all);
  const settled = before.filter(
    (question) => question.answered !== undefined && !now.some(({ id }) => id === question.id),
  );
  return [...now, ...settled.map(noLongerRaised)];
}
