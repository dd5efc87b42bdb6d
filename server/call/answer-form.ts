import { z } from 'zod';
import { defined } from '../../shared/defined.ts';
import { amountsIn } from '../../shared/quantities/amounts-in.ts';
import { inSpoken } from '../../shared/quantities/authored.ts';
import { formatQuantity } from '../../shared/quantities/format.ts';
import { toldIn } from '../../shared/quantities/spoken-units.ts';
import { fromSi } from '../../shared/quantities/units.ts';
import { answerQuestion, asksForLash } from '../../shared/schemas/commands.ts';
import { STEP_NAMES, type StepName } from '../../shared/steps.ts';
import type { AnswerChoice } from '../mechanics/assessment/assessment.ts';
import { keepAnswer } from '../records/answers/answers.ts';
import {
  choiceField,
  type FormState,
  numberField,
  quantityField,
  selectField,
  textField,
} from '../web/forms/fields.ts';
import type { Fields } from '../web/forms/read-form.ts';
import type { CallContext } from './context.ts';
import type { PageForm } from './forms.ts';
import { type StepForm, stepForm } from './step-form.ts';
import { valveWords } from './valve-words.ts';

const LABELS = {
  answer: 'What was found',
  value: 'How much lash was in it',
  cylinder: 'Cylinder',
  valve: 'Valve',
  lean: 'How far it leans',
  words: 'In plain words',
};

/** Something that is asked, with the answers it may have. */
interface Answerable {
  /** Of the form on its page. */
  readonly name: string;
  readonly ask: string;
  readonly code: string;
  /** The step that shows it, and that is shown again once it is answered. */
  readonly step: StepName;
  readonly answers: readonly Pick<
    AnswerChoice,
    'code' | 'label' | 'takesValue' | 'takesLean' | 'takesValve' | 'value'
  >[];
  readonly questionId?: string;
  readonly setUpId?: string;
}

const offerField = (code: string): string => `offer-${code}`;

/** The amounts that answers stand for go along, so that what was offered is what is kept. */
const offersOf = ({ answers }: Answerable): Record<string, string> =>
  Object.fromEntries(
    answers.flatMap(({ code, value }) =>
      value === undefined ? [] : [[offerField(code), formatQuantity(fromSi(value, toldIn('in')))]],
    ),
  );

const takesValue = ({ answers }: Answerable): boolean => answers.some((each) => each.takesValue === true);

/** Which valve it is, for an answer that names one. */
const valveFields = (shown: FormState, context: CallContext) => [
  numberField(shown, 'cylinder', LABELS.cylinder, {
    inputmode: 'numeric',
    optional: true,
    hint: 'Of the one valve, where it is one.',
    ...(context.side === 'bench' ? { big: true } : {}),
  }),
  selectField(shown, 'valve', LABELS.valve, valveWords(context), { first: 'Not said', optional: true }),
];

/** One of the answers, and what the person said to it. */
export const answerForm = (context: CallContext, of: Answerable): PageForm => ({
  name: of.name,
  action: `${context.base}/answers`,
  labels: LABELS,
  schema: answerQuestion,
  hidden: {
    step: of.step,
    question: of.ask,
    code: of.code,
    ...defined({ questionId: of.questionId, setUpId: of.setUpId }),
    ...offersOf(of),
  },
  groups: (shown) => [
    {
      slots: [
        choiceField(
          shown,
          'answer',
          LABELS.answer,
          Object.fromEntries(of.answers.map(({ code, label }) => [code, label])),
        ),
        ...(takesValue(of)
          ? [
              quantityField(shown, 'value', LABELS.value, 'length', {
                optional: true,
                hint: inSpoken('As it was said: .018, 18 thou. Not known is left empty.'),
                ...(context.side === 'bench' ? { big: true } : {}),
              }),
            ]
          : []),
        ...(of.answers.some(({ takesValve }) => takesValve) ? valveFields(shown, context) : []),
        ...(of.answers.some((each) => each.takesLean === true)
          ? [
              quantityField(shown, 'lean', LABELS.lean, 'angle', {
                assume: 'deg',
                optional: true,
                hint: 'In degrees, seen from front or side. Not measured is left empty.',
                ...(context.side === 'bench' ? { big: true } : {}),
              }),
            ]
          : []),
      ],
    },
    // An answer is one tap; what they said to it goes beside it where somebody wants it kept.
    {
      legend: 'Add what was said',
      fold: (shown.typed.words ?? '') === '' ? 'shut' : 'open',
      slots: [
        textField(shown, 'words', LABELS.words, {
          optional: true,
          ...(context.side === 'bench' ? { big: true } : {}),
        }),
      ],
    },
  ],
  buttons: [{ label: 'Save the answer', kind: 'plain' }],
});

/** `not found: five turns on the small hand`; a state begins with its word, so that it is read as one later. */
const saidAs = (code: string, words: string): string =>
  [code.replaceAll('-', ' '), words.trim()].filter((each) => each !== '').join(': ');

const FOUND: Readonly<Record<string, string>> = { found: 'yes', 'not-found': 'no' };

/** An amount of lash says that it was left in. */
function withLash(posted: Fields): Fields {
  const { answer = '', value = '', words = '', code, questionId } = posted;
  if (answer !== '' || !asksForLash(code, questionId)) return posted;
  return value !== '' || amountsIn(words).length === 1 ? { ...posted, answer: 'set' } : posted;
}

/** An angle alone says that it leans. */
const withLean = (posted: Fields): Fields =>
  (posted.answer ?? '') === '' && (posted.lean ?? '') !== '' ? { ...posted, answer: 'leaning' } : posted;

/** What was posted under the names that the schema has. */
export function answerFields(all: Fields): Fields {
  const { answer = '', words = '', value = '', ...posted } = withLean(withLash(all));
  return {
    ...posted,
    // Words alone settle nothing: without one of the answers the form comes back with what was typed.
    answer: answer === '' ? '' : saidAs(answer, words),
    value: value === '' ? (all[offerField(answer)] ?? '') : value,
    found: FOUND[answer] ?? '',
  };
}

/** One amount in their own words is put back to them as the amount: kept only when they say so. */
function asksBack(posted: Fields): Fields {
  const { code, questionId, value = '', words = '' } = posted;
  const [amount, ...more] = asksForLash(code, questionId) && value === '' ? amountsIn(words) : [];
  if (amount === undefined || more.length > 0) return posted;
  return { ...withLash(posted), value: amount.typed };
}

const stepName = z.enum(STEP_NAMES);

/** Keeps the answer to a question of any step, and leads back to where it was asked. */
export const answersForm: StepForm = stepForm({
  path: '/answers',
  schema: answerQuestion,
  fields: answerFields,
  back: asksBack,
  run: async (input, { tx, principal, call, req }) => {
    await keepAnswer(tx, principal, call.buildId, input);
    const step = stepName.catch('ratio').parse(req.fields.step);
    return { step: input.setUpId === undefined ? step : `${step}?set-up=${input.setUpId}` };
  },
});
