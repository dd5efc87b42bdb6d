import type { ButtonData } from '../../views/parts/button.examples.ts';
import type { CallContext } from '../call/context.ts';
import { cardId } from '../call/question-form.ts';
import type { AssessedQuestion } from '../mechanics/assessment/assessment.ts';
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

/** What is next and done on this page has its way there too: a question that is open, an entry that was found wrong. */
export function onThisPage(frame: CallFrame, context: CallContext): ButtonData | undefined {
  const { next, questions } = context.assessment;
  const asked = questions.find(
    ({ isNext, step, answered }) => isNext === true && step === next?.step && answered === undefined,
  );
  if (asked !== undefined) return { label: 'Answer it', href: cardAt(context, asked), kind: 'plain' };
  const found = correctionOfAny(frame, context, next?.corrects ?? []);
  return found === undefined
    ? undefined
    : { label: `Correct line ${found.seq}`, href: found.href, kind: 'plain' };
}
