import { defined } from '../../shared/defined.ts';
import type { StepName } from '../../shared/steps.ts';
import type { Component } from '../../views/parts/components.ts';
import type { AssessedQuestion } from '../mechanics/assessment/assessment.ts';
import { subjectSaid, upperFirst } from '../mechanics/assessment/common/said.ts';
import { momentText } from '../web/dates.ts';
import { answerForm } from './answer-form.ts';
import { answeredText } from './answered-text.ts';
import type { CallContext } from './context.ts';
import { foldComponent } from './fold.ts';
import { formComponent, type PageForm, type RejectedForm } from './forms.ts';

/** Questions of a step as cards, with the forms that answer them. */
export interface Cards {
  readonly slots: readonly Component[];
  readonly forms: readonly PageForm[];
  /** Those of the slots that wait for an answer. */
  readonly waiting: readonly Component[];
  /** One of them came back with a fault. */
  readonly faulty: boolean;
}

/** Where the card of a question stands on its page, by its place in the assessment. */
export const cardId = (at: number): string => `question-${at}`;

/** Why it is asked before others. */
function whySaid({ weight, isNext }: AssessedQuestion): string {
  if (isNext === true) return 'what is next waits for it';
  return weight === 'strong' ? 'the figures fit it closely' : '';
}

/** What it is about, where that is less than the whole build, and why it is asked before others. */
const aboutSaid = (question: AssessedQuestion): string =>
  [question.about.of === 'build' ? '' : subjectSaid(question.about), whySaid(question)]
    .filter((each) => each !== '')
    .join(', ');

function card({ answers }: CallContext, question: AssessedQuestion, id: string): Component {
  const { ask, size, test, answered } = question;
  const kept = answers.find((each) => each.id === answered?.entryId);
  return {
    template: '/parts/question',
    data: {
      id,
      about: aboutSaid(question),
      words: ask,
      test,
      answers: [],
      ...defined({ size }),
      ...(kept === undefined
        ? {}
        : {
            answered: { text: answeredText(question, kept), who: kept.by, when: momentText(kept.at) },
          }),
    },
  };
}

/** One question: while it is open its form stands below it; once answered it can be answered again, a tap away. */
function asked(
  context: CallContext,
  question: AssessedQuestion,
  rejected: RejectedForm | undefined,
): { readonly slot: Component; readonly form: PageForm } {
  const { id, ask, code, step, answers, about, answered } = question;
  const at = context.assessment.questions.indexOf(question);
  const form = answerForm(context, {
    name: `answer-${at}`,
    ask,
    code,
    step,
    answers,
    questionId: id,
    ...(about.of === 'set-up' ? { setUpId: about.setUpId } : {}),
  });
  const own = formComponent(form, rejected);
  const below =
    answered === undefined
      ? own
      : foldComponent(`again-${at}`, 'Answer it again', [own], rejected?.typed.form === form.name);
  return {
    slot: {
      template: '/pages/call/pair',
      data: { slots: [card(context, question, cardId(at)), below] },
    },
    form,
  };
}

/** What is asked before readings are believed, each with its size, the test that settles it and its answer. */
export function questionCards(
  context: CallContext,
  questions: readonly AssessedQuestion[],
  rejected: RejectedForm | undefined,
): Cards {
  // What the whole call waits for is the one that is shown open.
  const first = questions.filter(({ isNext }) => isNext === true);
  const inOrder = [...first, ...questions.filter((each) => !first.includes(each))];
  const all = inOrder.map((question) => ({
    ...asked(context, question, rejected),
    waits: question.answered === undefined,
  }));
  return {
    slots: all.map(({ slot }) => slot),
    forms: all.map(({ form }) => form),
    waiting: all.filter(({ waits }) => waits).map(({ slot }) => slot),
    faulty: all.some(({ form }) => form.name === rejected?.typed.form),
  };
}

const counted = (count: number, one: string, more: string): string[] =>
  count < 1 ? [] : [count === 1 ? one : `${count} ${more}`];

/** One thing is asked at a time: the others and the answered are a tap away; a fault in one of those opens them. */
export function oneAtATime({ slots, waiting, faulty }: Cards): Component[] {
  const [first, ...later] = waiting;
  const answered = slots.filter((slot) => !waiting.includes(slot));
  const summary = upperFirst(
    [
      ...counted(later.length, 'one more question', 'more questions'),
      ...counted(answered.length, 'one answered', 'answered'),
    ].join(', '),
  );
  const others = [...later, ...answered];
  return [
    ...(first === undefined ? [] : [first]),
    ...(others.length === 0 ? [] : [foldComponent('more-questions', summary, others, faulty)]),
  ];
}

/** The questions that a step raises and settles. */
export const questionsOf = ({ assessment }: CallContext, step: StepName): readonly AssessedQuestion[] =>
  assessment.questions.filter((question) => question.step === step);

/** The questions of these ids, in their order. */
export const questionsNamed = (
  { assessment }: Pick<CallContext, 'assessment'>,
  ids: readonly string[],
): AssessedQuestion[] =>
  ids.flatMap((id) => assessment.questions.find((question) => question.id === id) ?? []);

/** Ask, size and test of each question as texts for paper, with the answer that was given. */
export const questionTexts = (questions: readonly AssessedQuestion[]): string[] =>
  questions.map((question) => {
    const { ask, size, test, answered } = question;
    const last = answered === undefined ? `What settles it: ${test}` : `Answered: ${answeredText(question)}.`;
    return [ask, size, last].filter((text) => text !== undefined).join(' ');
  });
