import { z } from 'zod';
import { defined } from '../../shared/defined.ts';
import { answerQuestion } from '../../shared/schemas/commands.ts';
import { STEP_NAMES, type StepName } from '../../shared/steps.ts';
import { keptWords } from '../mechanics/assessment/common/asked.ts';
import { keepAnswer } from '../records/answers/answers.ts';
import { choiceField, textField } from '../web/forms/fields.ts';
import type { Fields } from '../web/forms/read-form.ts';
import type { CallContext } from './context.ts';
import type { PageForm } from './forms.ts';
import { type StepForm, stepForm } from './step-form.ts';

const LABELS = { answer: 'What was found', words: 'In their own words' };

/** Something that is asked, with the answers it may have. */
interface Answerable {
  /** Of the form on its page. */
  readonly name: string;
  readonly ask: string;
  readonly code: string;
  /** The step that shows it, and that is shown again once it is answered. */
  readonly step: StepName;
  readonly answers: readonly { readonly code: string; readonly label: string }[];
  readonly questionId?: string;
  readonly setUpId?: string;
}

/** One of the answers, and what the person said to it. */
export const answerForm = ({ side, base }: CallContext, of: Answerable): PageForm => ({
  name: of.name,
  action: `${base}/answers`,
  labels: LABELS,
  hidden: {
    step: of.step,
    question: keptWords(of.ask),
    code: of.code,
    ...defined({ questionId: of.questionId, setUpId: of.setUpId }),
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
        textField(shown, 'words', LABELS.words, {
          optional: true,
          ...(side === 'bench' ? { big: true } : {}),
        }),
      ],
    },
  ],
  buttons: [{ label: 'Keep the answer', kind: 'plain' }],
});

/** `not found: five turns on the small hand`; a state begins with its word, so that it is read as one later. */
const saidAs = (code: string, words: string): string =>
  [code.replaceAll('-', ' '), words.trim()].filter((each) => each !== '').join(': ');

const FOUND: Readonly<Record<string, string>> = { found: 'yes', 'not-found': 'no' };

function answerFields({ answer = '', words = '', ...posted }: Fields): Fields {
  return {
    ...posted,
    // Words alone settle nothing: without one of the answers the form comes back with what was typed.
    answer: answer === '' ? '' : saidAs(answer, words),
    found: FOUND[answer] ?? '',
  };
}

const stepName = z.enum(STEP_NAMES);

/** Keeps the answer to a question of any step, and leads back to where it was asked. */
export const answersForm: StepForm = stepForm({
  path: '/answers',
  schema: answerQuestion,
  fields: answerFields,
  run: async (input, { tx, principal, call, req }) => {
    await keepAnswer(tx, principal, call.buildId, input);
    const step = stepName.catch('ratio').parse(req.fields.step);
    return { step: input.setUpId === undefined ? step : `${step}?set-up=${input.setUpId}` };
  },
});
