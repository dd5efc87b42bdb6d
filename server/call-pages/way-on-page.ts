import { defined } from '../../shared/defined.ts';
import type { ButtonData } from '../../views/parts/button.examples.ts';
import type { CallContext } from '../call/context.ts';
import { cardId } from '../call/question-form.ts';
import type { AssessedQuestion } from '../mechanics/assessment/assessment.ts';
import { groupKey } from '../mechanics/assessment/ratio/read/group-key.ts';
import type { LackCode } from '../mechanics/assessment/ratio/read/lack.ts';
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

/** What a set-up does not say, by the code of its lack, and the question that settles it. */
const SETTLED_BY: ReadonlyMap<string, string> = new Map<LackCode, string>([
  ['which-spring', 'spring-not-said'],
  ['which-lifter', 'lifter-not-said'],
  ['lash-not-said', 'lash-not-said'],
]);

/** An action is named by its code and, behind a colon, by what it is about. */
const codeIn = (action: string): string => action.split(':')[0] ?? '';

/** The set-ups of the arm on its valve that a lack is named with, behind its own name. */
function setUpsOf({ record }: CallContext, action: string): readonly string[] {
  const key = action.slice(action.indexOf(':') + 1);
  return record.setUps
    .filter(({ cylinder, valve, armId }) => {
      const own = groupKey({ cylinder, valve, ...defined({ armId }) });
      return key === own || key.startsWith(`${own}:sold-as-`);
    })
    .map(({ id }) => id);
}

/** The open question that what is next waits for. */
function askedOf(context: CallContext): AssessedQuestion | undefined {
  const { next, questions } = context.assessment;
  if (next === undefined) return undefined;
  const open = questions.filter(({ step, answered }) => answered === undefined && step === next.step);
  const code = SETTLED_BY.get(codeIn(next.action));
  const own = code === undefined ? [] : setUpsOf(context, next.action);
  return (
    open.find(({ isNext }) => isNext === true) ??
    open.find((each) => each.code === code && each.about.of === 'set-up' && own.includes(each.about.setUpId))
  );
}

/** The entries that are to be corrected: those of a question that found them wrong, or a pass that is named. */
function wrongOf(context: CallContext): readonly string[] {
  const { next, questions } = context.assessment;
  if (next === undefined) return [];
  const found = questions.find(({ id, answered }) => next.id === `next:${id}` && answered?.found === true);
  if (found !== undefined) return found.restsOn;
  const [, pass, lobe] = /^enter-again-pass(?:es)?-(\d+)[^:]*?(of-the-lobe)?(?=:)/.exec(next.action) ?? [];
  if (pass === undefined) return [];
  const own = setUpsOf(context, next.action);
  return context.readings
    .filter((each) => own.includes(each.setUpId) && each.replacedBy === undefined && !each.struck)
    .filter((each) => String(each.pass) === pass)
    .filter(({ kind }) => kind === (lobe === undefined ? 'valve-lift' : 'lobe-lift'))
    .map(({ id }) => id);
}

/** What is next and done on this page has its way there too: a question that is open, an entry that was found wrong. */
export function onThisPage(frame: CallFrame, context: CallContext): ButtonData | undefined {
  const asked = askedOf(context);
  if (asked !== undefined) return { label: 'Answer it', href: cardAt(context, asked), kind: 'plain' };
  const wrong = wrongOf(context);
  const found = wrong.length === 0 ? undefined : correctionOfAny(frame, context, wrong);
  return found === undefined
    ? undefined
    : { label: `Correct line ${found.seq}`, href: found.href, kind: 'plain' };
}
