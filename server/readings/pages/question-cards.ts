import type { Slot } from '../../../views/parts/part.ts';
import { type Again, formSlot, type PageForm } from '../../calls/pages/forms-on-page.ts';
import { momentText } from '../../calls/pages/moments.ts';
import { type Sight, valveName } from '../../calls/pages/sight.ts';
import { textField } from '../../forms/fields.ts';
import type { Question } from '../../mechanics/questions/types.ts';
import type { SetUpRatio } from '../ratio.ts';
import { answerOf, questionKey } from './answered.ts';

const FOUND = 'What was found';

function answerForm(sight: Sight, found: SetUpRatio, question: Question, index: number): PageForm {
  return {
    name: `answer-${index}`,
    action: `${sight.base}/answers`,
    labels: { answer: FOUND, question: 'Question' },
    hidden: { question: questionKey(question), code: question.code, setUpId: found.setUp.id },
    groups: (shown) => [
      { slots: [textField(shown, 'answer', FOUND, sight.side === 'bench' ? { big: true } : {})] },
    ],
    buttons: [{ label: 'Keep the answer', kind: 'plain' }],
  };
}

function card(sight: Sight, found: SetUpRatio, question: Question, index: number): Slot {
  const answer = answerOf(sight.answers, found.setUp.id, question);
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
  readonly slots: readonly Slot[];
  readonly forms: readonly PageForm[];
  /** One of them came back with a fault. */
  readonly faulty: boolean;
}

/** What is asked before the readings are believed, each with its size, the test that settles it and its answer. */
export function questionCards(sight: Sight, found: SetUpRatio, again: Again | undefined): Cards {
  const forms: PageForm[] = [];
  const slots = found.questions.flatMap((question, index) => {
    const asked = card(sight, found, question, index);
    if (answerOf(sight.answers, found.setUp.id, question) !== undefined) return [asked];
    const form = answerForm(sight, found, question, index);
    forms.push(form);
    return [{ template: '/pages/call/pair', data: { slots: [asked, formSlot(form, again)] } }];
  });
  return { slots, forms, faulty: again?.typed.form?.startsWith('answer-') === true };
}
