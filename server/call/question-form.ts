import type { Component } from '../../views/parts/components.ts';
import type { AssessedQuestion } from '../mechanics/assessment/assessment.ts';
import { subjectSaid } from '../mechanics/assessment/common/said.ts';
import { momentText } from '../web/dates.ts';
import { textField } from '../web/forms/fields.ts';
import { questionKey } from './answered.ts';
import type { CallContext } from './context.ts';
import type { PageForm } from './forms.ts';

const FOUND = 'What was found';

/** A question of the assessment as a card, with the form that answers it while it is open. */
export function questionForm(
  context: CallContext,
  question: AssessedQuestion,
  { name }: { readonly name: string },
): { card: Component; form?: PageForm } {
  const { about, answered, ask, code, id, size, test } = question;
  const entry = context.answers.find((each) => each.id === answered?.entryId);
  const card: Component = {
    template: '/parts/question',
    data: {
      id: name,
      about: subjectSaid(about),
      words: ask,
      ...(size === undefined ? {} : { size }),
      test,
      answers: [],
      ...(entry === undefined
        ? {}
        : { answered: { text: entry.answer, who: entry.by, when: momentText(entry.at) } }),
    },
  };
  if (answered !== undefined) return { card };
  return {
    card,
    form: {
      name: `answer-${name}`,
      action: `${context.base}/answers`,
      labels: { answer: FOUND, question: 'Question' },
      hidden: { questionId: id, question: questionKey(question), code },
      groups: (shown) => [
        { slots: [textField(shown, 'answer', FOUND, context.side === 'bench' ? { big: true } : {})] },
      ],
      buttons: [{ label: 'Keep the answer', kind: 'plain' }],
    },
  };
}
