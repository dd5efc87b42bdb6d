import type { Component } from '../../../views/parts/components.ts';
import type { SetUpRatio } from '../../assessment/ratio/ratio.ts';
import { answerOf, questionKey } from '../../call/answered.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { formComponent, type PageForm, type RejectedForm } from '../../call/forms.ts';
import type { Question } from '../../mechanics/questions/types.ts';
import { momentText } from '../../web/dates.ts';
import { textField } from '../../web/forms/fields.ts';

const FOUND = 'What was found';

function answerForm(context: CallContext, found: SetUpRatio, question: Question, index: number): PageForm {
  return {
    name: `answer-${index}`,
    action: `${context.base}/answers`,
    labels: { answer: FOUND, question: 'Question' },
    hidden: { question: questionKey(question), code: question.code, setUpId: found.setUp.id },
    groups: (shown) => [
      { slots: [textField(shown, 'answer', FOUND, context.side === 'bench' ? { big: true } : {})] },
    ],
    buttons: [{ label: 'Keep the answer', kind: 'plain' }],
  };
}

function cardComponent(
  context: CallContext,
  found: SetUpRatio,
  question: Question,
  index: number,
): Component {
  const answer = answerOf(context.answers, found.setUp.id, question);
  return {
    template: '/parts/question',
    data: {
      id: `question-${index}`,
      about: `${valveName(found.setUp)}${question.weight === 'strong' ? ', the figures fit it closely' : ''}`,
      words: question.ask,
      size: question.size,
      test: question.test,
      answers: [],
      ...(answer === undefined
        ? {}
        : { answered: { text: answer.answer, who: answer.by, when: momentText(answer.at) } }),
    },
  };
}

export interface Cards {
  readonly slots: readonly Component[];
  readonly forms: readonly PageForm[];
  /** One of them came back with a fault. */
  readonly faulty: boolean;
}

/** What is asked before the readings are believed, each with its size, the test that settles it and its answer. */
export function questionCards(
  context: CallContext,
  found: SetUpRatio,
  rejected: RejectedForm | undefined,
): Cards {
  const forms: PageForm[] = [];
  const slots = found.questions.flatMap((question, index): Component[] => {
    const asked = cardComponent(context, found, question, index);
    if (answerOf(context.answers, found.setUp.id, question) !== undefined) return [asked];
    const form = answerForm(context, found, question, index);
    forms.push(form);
    return [{ template: '/pages/call/pair', data: { slots: [asked, formComponent(form, rejected)] } }];
  });
  return { slots, forms, faulty: rejected?.typed.form?.startsWith('answer-') === true };
}
