import type { ButtonData } from '../../views/parts/button.examples.ts';
import type { CallContext } from '../call/context.ts';
import type { PageForm } from '../call/forms.ts';
import { cardId } from '../call/question-form.ts';
import type { AssessedQuestion } from '../mechanics/assessment/assessment.ts';
import { fieldId } from '../web/forms/fields.ts';
import type { CallFrame } from './frame.ts';

/** Where the card of a question stands: of a set-up, on the page of that one. */
export function cardAt({ assessment, base }: CallContext, question: AssessedQuestion): string {
  const { step, about } = question;
  const shown = about.of === 'set-up' ? `?set-up=${about.setUpId}` : '';
  return `${base}/steps/${step}${shown}#${cardId(assessment.questions.indexOf(question))}`;
}

/** Where one of these entries is corrected. */
function correctionOfAny({ steps }: CallFrame, context: CallContext, ids: readonly string[]) {
  return steps
    .flatMap(({ corrections }) => corrections)
    .flatMap(({ path, param, entries }) =>
      entries(context)
        .filter(({ id }) => ids.includes(id))
        .map(({ id, seq }) => ({ seq, href: `${context.base}${path.replace(`:${param}`, id)}` })),
    )
    .at(0);
}

/** What the page shows: its forms, what of the step they are of, and whether it is a page beside the steps. */
export interface Shown {
  readonly forms: readonly PageForm[];
  readonly shows?: string | undefined;
  readonly isBeside: boolean;
}

/** The field that what is next is entered in, where the page has it. */
export function fieldOfNext({ assessment: { next } }: CallContext, { forms }: Shown): string | undefined {
  const { field, form: named } = next?.at ?? {};
  const form =
    field === undefined
      ? undefined
      : forms.find(({ name, labels }) => (named ?? name) === name && Object.hasOwn(labels, field));
  return field === undefined || form === undefined ? undefined : fieldId(field, { prefix: form.name });
}

/** On a phone the first field of the page is the next thing down: a button that leads there is only in its way. */
function isRightBelow({ assessment: { next }, side }: CallContext, { forms: [first] }: Shown): boolean {
  const [field] = Object.keys(first?.labels ?? {});
  return side === 'bench' && field !== undefined && field === next?.at?.field;
}

/** Where another part of the step has the place of what is next. */
function onOtherPart({ assessment: { next }, base }: CallContext, { shows }: Shown): string | undefined {
  const part = next?.at?.part;
  if (next === undefined || part === undefined || shows === `of=${part}`) return undefined;
  return `${base}/steps/${next.step}?of=${part}`;
}

/** What is next and done on this page has its way there too: a question that is open, an entry that was found wrong, a field. */
export function onThisPage(frame: CallFrame, context: CallContext, shown: Shown): ButtonData | undefined {
  const { next, questions } = context.assessment;
  const to = (label: string, href: string): ButtonData => ({
    label,
    href,
    kind: 'plain',
    ...(context.side === 'desk' ? { key: 'n' } : {}),
  });
  if (next?.closes === true)
    return context.side === 'desk' && !shown.isBeside
      ? to('Close the call', `${context.base}/close`)
      : undefined;
  const asked = questions.find(
    ({ isNext, step, answered }) => isNext === true && step === next?.step && answered === undefined,
  );
  if (asked !== undefined) return to('Answer it', cardAt(context, asked));
  const found = correctionOfAny(frame, context, next?.corrects ?? []);
  // The page on which it is corrected does not lead to itself.
  if (found !== undefined) return shown.isBeside ? undefined : to(`Correct line ${found.seq}`, found.href);
  const other = shown.isBeside ? undefined : onOtherPart(context, shown);
  if (other !== undefined) return to('Enter it', other);
  const field = fieldOfNext(context, shown);
  return field === undefined || isRightBelow(context, shown) ? undefined : to('Enter it', `#${field}`);
}
