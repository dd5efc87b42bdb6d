import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { inInches, quantityView } from '../../../shared/schemas/answer-parts.ts';
import { STEP_NAMES } from '../../../shared/steps.ts';
import type { AnswerChoice, AssessedQuestion } from '../../mechanics/assessment/assessment.ts';
import { ids, showSubject, subjectView } from './subject.ts';

const answeredView = z.object({ entryId: z.string(), answer: z.string(), found: z.boolean().optional() });

const answerChoiceView = z
  .object({
    code: z.string().meta({ description: 'the answer begins with it' }),
    label: z.string(),
    changes: z.string(),
    takesValve: z
      .boolean()
      .meta({ description: 'the valve may go with it: give it as the answer’s cylinder and valve' }),
    takesValue: z.boolean().meta({ description: 'an amount may go with it: give it as the answer’s value' }),
    takesLean: z
      .boolean()
      .meta({ description: 'how far the plunger leaned may go with it: as the answer’s lean' }),
    value: quantityView.optional().meta({ description: 'the amount it stands for: the answer’s value' }),
  })
  .meta({ id: 'AnswerChoice' });

const showChoice = ({ code, label, changes, takesValve, takesValue, takesLean, value }: AnswerChoice) =>
  answer(answerChoiceView, {
    code,
    label,
    changes,
    takesValve: takesValve === true,
    takesValue: takesValue === true,
    takesLean: takesLean === true,
    value: value === undefined ? undefined : inInches(value),
  });

export const assessedQuestionView = z
  .object({
    id: z.string(),
    code: z.string(),
    about: subjectView,
    step: z.enum(STEP_NAMES).meta({ description: 'where it is answered' }),
    weight: z.enum(['strong', 'weak']),
    isNext: z
      .boolean()
      .meta({ description: 'what is next rests on its answer; it stands first, and is strong' }),
    ask: z.string(),
    size: z.string().optional(),
    test: z.string().meta({ description: 'what settles it' }),
    answers: z.array(answerChoiceView),
    answered: answeredView.optional(),
    restsOn: ids,
  })
  .meta({ id: 'AssessedQuestion' });

const showAnswered = ({ entryId, answer: said, found }: NonNullable<AssessedQuestion['answered']>) =>
  answer(answeredView, { entryId, answer: said, found });

/** The fields of a question as they go out, for answers that have more beside them. */
export const questionFields = (question: AssessedQuestion) => ({
  id: question.id,
  code: question.code,
  about: showSubject(question.about),
  step: question.step,
  weight: question.weight,
  isNext: question.isNext === true,
  ask: question.ask,
  size: question.size,
  test: question.test,
  answers: question.answers.map(showChoice),
  answered: question.answered === undefined ? undefined : showAnswered(question.answered),
  restsOn: question.restsOn,
});

export const showQuestion = (question: AssessedQuestion) =>
  answer(assessedQuestionView, questionFields(question));
