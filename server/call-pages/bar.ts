import { defined } from '../../shared/defined.ts';
import type { StepName } from '../../shared/steps.ts';
import type { BarData, BarLink } from '../../views/parts/bar.examples.ts';
import type { ButtonData } from '../../views/parts/button.examples.ts';
import type { Component } from '../../views/parts/components.ts';
import type { CallContext } from '../call/context.ts';
import { breathsOf, type LeadParts } from '../call/headline.ts';
import { type CallFrame, linkOf } from './frame.ts';
import { photographAt } from './photographs/upload-form.ts';
import { namesOf } from './tape.ts';
import { tapeText } from './tape-text.ts';
import { cardAt, onThisPage, type Shown } from './way-on-page.ts';

/** Another step, as a link: it never weighs more than what is kept on this one. */
const elsewhere = (
  frame: CallFrame,
  { base, side }: CallContext,
  step: StepName,
  part?: string,
): BarLink => ({
  href: `${base}/steps/${step}${part === undefined ? '' : `?of=${part}`}`,
  label: linkOf(frame, step),
  ...(side === 'desk' ? { key: 'n' } : {}),
});

/** What is next, with the way to it; `beside` an answer, that is not said again. A photograph is kept on its own page. */
function nextOf(
  frame: CallFrame,
  context: CallContext,
  current: string,
  {
    own,
    beside,
    shown,
  }: { readonly own: ButtonData | undefined; readonly beside: boolean; readonly shown: Shown },
): BarData['next'] {
  const { next } = context.assessment;
  if (next === undefined) return undefined;
  const sentence = (beside ? next.besideAnswer : undefined) ?? next.sentence;
  const here = next.step === current;
  const link = here ? undefined : elsewhere(frame, context, next.step, next.at?.part);
  if (next.photograph !== true)
    return {
      sentence,
      ...defined({ button: here ? (own ?? onThisPage(frame, context, shown)) : undefined, link }),
    };
  const kind = here ? 'primary' : 'plain';
  return {
    sentence,
    button: { label: 'Photograph it', href: photographAt(context), kind },
    ...defined({ link, also: here && own !== undefined ? { ...own, kind: 'plain' as const } : undefined }),
  };
}

/** How many questions nobody has answered yet, weak ones among them, with the way to the one that is asked first. */
function openOf(context: CallContext): BarLink | undefined {
  const { questions } = context.assessment;
  const open = questions.filter(({ answered }) => answered === undefined);
  const first =
    open.find(({ isNext }) => isNext) ?? open.find(({ weight }) => weight === 'strong') ?? open[0];
  if (first === undefined) return undefined;
  return {
    label: open.length === 1 ? '1 question open' : `${open.length} questions open`,
    href: cardAt(context, first),
  };
}

/** The answer of the page; where it has none, that of the call, with the way to it where it is another step’s. */
function answerOf(
  frame: CallFrame,
  context: CallContext,
  current: string,
  lead: LeadParts['lead'],
): BarData['answer'] {
  const open = openOf(context);
  if (lead !== undefined) {
    const { sentence, rest, lacks = [] } = lead;
    // What stands above already is not said once more.
    const above = [context.assessment.next?.sentence ?? '', sentence, rest ?? ''].join(' ').toLowerCase();
    return {
      sentence,
      ...defined({ rest, open }),
      lacks: lacks.filter((lack) => !above.includes(lack.toLowerCase())),
    };
  }
  const [first] = context.assessment.headlines;
  if (first === undefined) return undefined;
  // Whole, wherever it stands: what its first sentence hangs on is in those behind it.
  const told = { ...breathsOf(first.sentence), ...defined({ open }) };
  // A form of this step alone: what it answered stays the answer.
  if (first.step === current) return told;
  return {
    ...told,
    link: { href: `${context.base}/steps/${first.step}`, label: linkOf(frame, first.step) },
  };
}

/** Where what was kept in a line is put right; several entries in one line each have their own place. */
function undoOf(
  { steps }: CallFrame,
  context: CallContext,
  seq: number,
  current: string,
): BarLink | undefined {
  // Sums are put right on several steps: on the one that they were kept on.
  const own = steps.filter(({ name }) => name === current);
  const [found, ...more] = own.flatMap(({ corrections }) =>
    corrections.flatMap(({ path, param, entries }) =>
      entries(context)
        .filter((entry) => entry.seq === seq)
        .map(({ id }) => path.replace(`:${param}`, id)),
    ),
  );
  if (found === undefined || more.length > 0) return undefined;
  return { href: `${context.base}${found}`, label: 'Correct it' };
}

/** What was kept by the form that led here, in the words of the tape. */
function keptOf(frame: CallFrame, context: CallContext, current: string): BarData['kept'] {
  const event = context.events.find(({ seq }) => seq === context.kept);
  if (event === undefined) return undefined;
  // What the other side has entered since is told by itself: beside that it is old.
  if (context.events.some(({ seq, by }) => seq > event.seq && by !== event.by)) return undefined;
  const { text, value } = tapeText(frame.told, event, namesOf(context));
  // What was read comes first, what was told beside it after that.
  const [what = '', ...beside] = text.split('; ');
  const first = value === undefined ? what : `${what}, ${value}`;
  return {
    text: [first, ...beside].join('; '),
    ...defined({ undo: undoOf(frame, context, event.seq, current) }),
  };
}

/** The first lines of a step: what was kept, what is next, and the answer. */
export function barOf(
  frame: CallFrame,
  context: CallContext,
  current: string,
  of: {
    readonly lead: LeadParts['lead'];
    readonly next: ButtonData | undefined;
    readonly shown: Shown;
  },
): Component {
  const answer = answerOf(frame, context, current, of.lead);
  return {
    template: '/parts/bar',
    data: defined({
      kept: keptOf(frame, context, current),
      next: nextOf(frame, context, current, { own: of.next, beside: answer !== undefined, shown: of.shown }),
      answer,
    }),
  };
}
