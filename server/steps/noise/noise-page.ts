import type { Component } from '../../../views/parts/components.ts';
import { answerForm } from '../../call/answer-form.ts';
import type { CallContext } from '../../call/context.ts';
import { foldComponent } from '../../call/fold.ts';
import { formComponent, type PageForm, type RejectedForm, type StepBody } from '../../call/forms.ts';
import { stepHeadlines } from '../../call/headline.ts';
import { type Cards, questionCards } from '../../call/question-form.ts';
import type { AssessedQuestion } from '../../mechanics/assessment/assessment.ts';
import { noticeComponent, tableComponent } from '../../web/components.ts';
import { candidatesTable, checksTable, factsTable } from './candidates-table.ts';
import { signForm } from './sign-form.ts';

/** A call about something else: the first answer here makes it one about noise too. */
function notAsked(context: CallContext, rejected: RejectedForm | undefined): StepBody {
  const first = context.assessment.details.noise.questions.find(({ code }) => code === 'noise-which');
  if (first === undefined) throw new Error('the first question about noise is not there');
  const form = answerForm(context, {
    name: 'noise-begins',
    ask: first.ask,
    code: first.code,
    step: 'noise',
    answers: first.answers,
    questionId: first.id,
  });
  const title = 'Nothing was told of noise or a failure on this call. The first answer here begins it.';
  return { forms: [form], slots: [noticeComponent(`${title} ${first.ask}`), formComponent(form, rejected)] };
}

const folded = (id: string, title: string, { slots, faulty }: Cards): Component[] =>
  slots.length === 0 ? [] : [foldComponent(id, `${title}: ${slots.length}`, [...slots], faulty)];

/** Facts, causes and what would part them: at the desk open, on a phone behind the one question that it is asked. */
function tablesOf({ side, assessment }: CallContext): Component[] {
  const { noise } = assessment.details;
  const tables = [...factsTable(noise), candidatesTable(noise), ...checksTable(noise)].map(tableComponent);
  if (side === 'desk') return tables;
  const count = noise.candidates.length;
  return [
    foldComponent(
      'noise-causes',
      `What it may come of, ${count} causes, and what would tell them apart`,
      tables,
    ),
  ];
}

/** The question that comes first of those that are open; under a stop too, for all of them are asked or looked at. */
function firstOpen(context: CallContext, open: readonly AssessedQuestion[]): AssessedQuestion | undefined {
  const [next] = context.assessment.details.noise.checks.flatMap(({ code }) =>
    open.filter((question) => question.code === code),
  );
  return next ?? open.find(({ weight }) => weight === 'strong');
}

/** On a phone buttons that stop it do not lie under the same thumb as the one that saves: they are a tap further. */
function signComponents(
  { side }: CallContext,
  forms: readonly PageForm[],
  rejected: RejectedForm | undefined,
): Component[] {
  const slots = forms.map((form) => formComponent(form, rejected));
  return side === 'desk' || slots.length === 0
    ? slots
    : [foldComponent('signs-fold', 'A sign of damage was seen or felt: say which, and it stops', slots)];
}

/** What is next is asked on another step: nothing else is put to whoever looks here before that. */
function askedElsewhere({ assessment: { next, details } }: CallContext): string | undefined {
  const [first] = details.noise.checks;
  const isNext = first !== undefined && next?.id === `next:noise:${first.code}`;
  return isNext && first.step !== 'noise' && !first.turns ? ASKED_FIRST : undefined;
}

const ASKED_FIRST = 'The question under Next is asked first. The questions about the noise go on after it.';
const NONE_OPEN = 'No question is open.';
/** Questions are open below: it is not said that none is. */
const NONE_PARTS =
  'What is still open stands under “Other questions”; none of it would part the causes left.';

/** One question at a time, the candidates with what speaks for them, what would tell them apart, and every answer. */
export function noisePage(context: CallContext, rejected: RejectedForm | undefined): StepBody {
  const { assessment } = context;
  const { noise } = assessment.details;
  if (!noise.active) return notAsked(context, rejected);
  const own = assessment.questions.filter(({ step }) => step === 'noise');
  // Asked again: nobody knew, and it may not stay so.
  const again = new Set(noise.checks.map(({ code }) => code));
  const isOpen = ({ code, answered }: AssessedQuestion) => answered === undefined || again.has(code);
  const open = own.filter(isOpen);
  const elsewhere = askedElsewhere(context);
  const now = elsewhere === undefined ? firstOpen(context, open) : undefined;
  const cards = (questions: readonly AssessedQuestion[]) => questionCards(context, questions, rejected);
  const asked = cards(now === undefined ? [] : [now]);
  const answered = cards(own.filter((each) => !isOpen(each)));
  const others = cards(open.filter((question) => question !== now));
  const signs = own.find(({ code }) => code === 'noise-signs');
  // While they are what is asked, they stand there, and not once more below it.
  const sign: PageForm[] = signs === undefined || signs === now ? [] : [signForm(context, signs)];
  const entry = [
    ...(now === undefined
      ? [noticeComponent(elsewhere ?? (open.length === 0 ? NONE_OPEN : NONE_PARTS))]
      : asked.slots),
    ...signComponents(context, sign, rejected),
  ];
  const said = stepHeadlines(context, 'noise');
  return {
    forms: [...asked.forms, ...sign, ...answered.forms, ...others.forms],
    slots: [
      ...(context.side === 'desk' ? [...entry, ...said] : [...said, ...entry]),
      ...folded('noise-answered', 'Answered, and how to put it right', answered),
      ...tablesOf(context),
      ...folded('noise-others', 'Other questions', others),
    ],
  };
}
