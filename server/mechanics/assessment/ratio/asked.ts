import { defined } from '../../../../shared/defined.ts';
import { questionsFor } from '../../questions/questions.ts';
import type { AssessedQuestion, Subject } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import type { Evidence } from '../evidence.ts';
import { answerTo, foundBy } from './answers.ts';
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

type Choices = AssessedQuestion['answers'];
const choice = (code: string, label: string, changes: string) => ({ code, label, changes });

/** Questions whose answer is a state of the set-up. */
const STATES: Readonly<Record<string, Choices>> = {
  'spring-not-said': [
    choice('light', 'Light checking spring', 'It is a light-spring ratio, and is set against the mark.'),
    choice('running', 'Running spring', 'It is a running-spring ratio, and is set against no mark.'),
  ],
  'lifter-not-said': [
    choice('solid', 'Solid', 'Nothing sinks under the reading.'),
    choice('locked', 'Hydraulic, locked solid', 'Nothing sinks under the reading.'),
    choice('hydraulic', 'Hydraulic', 'The plunger may have sunk: passes that fall settle nothing.'),
  ],
  'lash-not-said': [
    choice('zero', 'Taken up to zero', 'The lift is the gross lift.'),
    choice('set', 'Left in', 'The lash is missing from the lift: it is read again at zero.'),
  ],
};

const CHECKED: Choices = [
  choice('found', 'Yes, that is what it was', 'The reading is entered again or struck out by a person.'),
  choice('not-found', 'Looked: it is not so', 'The reading counts, and this is ruled out for it.'),
];

/** The questions of a set-up, each with the answer it has. */
function questionsOf(evidence: Evidence, own: SetUpRead, all: readonly SetUpRead[]): AssessedQuestion[] {
  const about = setUpSubject(own.setUp);
  const questions = questionsFor(questionInput(evidence, own, all)).map((doubt) =>
    asked(doubt, { about, step: 'ratio', answers: [], choices: STATES[doubt.code] ?? CHECKED }),
  );
  return questions.map((question) => {
    const answer = answerTo(question, questions, own.setUp.answers);
    if (answer === undefined) return question;
    const found = foundBy(answer);
    const { id: entryId, answer: text } = answer;
    return {
      ...question,
      answered: { entryId, answer: text, ...defined({ found }) },
    };
  });
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
  return [...now, ...settled];
}
