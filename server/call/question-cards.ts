import type { Component } from '../../views/parts/components.ts';
import type { AssessedQuestion } from '../mechanics/assessment/assessment.ts';
import type { CallContext } from './context.ts';
import { formComponent, type PageForm, type RejectedForm } from './forms.ts';
import { questionForm } from './question-form.ts';

/** The questions of these ids, in their order. */
export const questionsNamed = (
  { assessment }: Pick<CallContext, 'assessment'>,
  ids: readonly string[],
): AssessedQuestion[] =>
  ids.flatMap((id) => assessment.questions.find((question) => question.id === id) ?? []);

export interface QuestionCards {
  readonly slots: readonly Component[];
  readonly forms: readonly PageForm[];
}

/** Questions with their answers; one that is open has the form beside it, though not while nobody may turn it. */
export function questionCards(
  context: CallContext,
  questions: readonly AssessedQuestion[],
  rejected: RejectedForm | undefined,
): QuestionCards {
  const forms: PageForm[] = [];
  const slots = questions.map((question, index): Component => {
    const { card, form } = questionForm(context, question, { name: `question-${index}` });
    if (form === undefined) return card;
    forms.push(form);
    return { template: '/pages/call/pair', data: { slots: [card, formComponent(form, rejected)] } };
  });
  return { slots, forms };
}

/** Ask, size and test of each question as texts for paper, with the answer that was given. */
export const questionTexts = (questions: readonly AssessedQuestion[]): string[] =>
  questions.map(({ ask, size, test, answered }) =>
    [ask, size, answered === undefined ? `What settles it: ${test}` : `Answered: ${answered.answer}.`]
      .filter((text) => text !== undefined)
      .join(' '),
  );
