import { defined } from '../../shared/defined.ts';
import type { StepName } from '../../shared/steps.ts';
import type { BarData, BarLink } from '../../views/parts/bar.examples.ts';
import type { ButtonData } from '../../views/parts/button.examples.ts';
import type { Component } from '../../views/parts/components.ts';
import type { CallContext } from '../call/context.ts';
import { breathsOf, type LeadParts } from '../call/headline.ts';
import { cardId } from '../call/question-form.ts';
import { type CallFrame, linkOf } from './frame.ts';
import { photographAt } from './photographs/upload-form.ts';
import { namesOf } from './tape.ts';
import { tapeText } from './tape-text.ts';

/** The way to what is next where it is done on another step, else what this step has for it. */
function buttonOf(
  frame: CallFrame,
  { base, side }: CallContext,
  step: StepName,
  { current, own }: { readonly current: string; readonly own: ButtonData | undefined },
): ButtonData | undefined {
  if (step === current) return own;
  return {
    label: linkOf(frame, step),
    href: `${base}/steps/${step}`,
    kind: 'primary',
    ...(side === 'desk' ? { key: 'n' } : {}),
  };
}

/** What is next, with the way to it; `beside` an answer, that is not said again. A photograph is kept on its own page. */
function nextOf(
  frame: CallFrame,
  context: CallContext,
  current: string,
  { own, beside }: { readonly own: ButtonData | undefined; readonly beside: boolean },
): BarData['next'] {
  const { next } = context.assessment;
  if (next === undefined) return undefined;
  const sentence = (beside ? next.besideAnswer : undefined) ?? next.sentence;
  const button = buttonOf(frame, context, next.step, { current, own });
  if (next.photograph !== true) return { sentence, ...defined({ button }) };
  return {
    sentence,
    button: { label: 'Photograph it', href: photographAt(context), kind: 'primary' },
    ...(button === undefined ? {} : { also: { ...button, kind: 'plain' } }),
  };
}

/** How many questions nobody has answered yet, weak ones among them, with the way to the one that is asked first. */
function openOf({ assessment: { questions }, base }: CallContext): BarLink | undefined {
  const open = questions.filter(({ answered }) => answered === undefined);
  const first =
    open.find(({ isNext }) => isNext) ?? open.find(({ weight }) => weight === 'strong') ?? open[0];
  if (first === undefined) return undefined;
  return {
    label: open.length === 1 ? '1 question open' : `${open.length} questions open`,
    href: `${base}/steps/${first.step}#${cardId(questions.indexOf(first))}`,
  };
}

/** The answer of the page; where it has none, that of the call, with the way to it. */
function answerOf(
  frame: CallFrame,
  context: CallContext,
  current: string,
  lead: LeadParts['lead'],
): BarData['answer'] {
  const open = openOf(context);
  if (lead !== undefined) {
    const { sentence, rest, lacks } = lead;
    return { sentence, ...defined({ rest, lacks, open }) };
  }
  const first = context.assessment.headlines.find(({ step }) => step !== current);
  if (first === undefined) return undefined;
  return {
    sentence: breathsOf(first.sentence).sentence,
    ...defined({ open }),
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
  return { href: `${context.base}${found}`, label: 'Put it right' };
}

/** What was kept by the form that led here, in the words of the tape. */
function keptOf(frame: CallFrame, context: CallContext, current: string): BarData['kept'] {
  const event = context.events.find(({ seq }) => seq === context.kept);
  if (event === undefined) return undefined;
  const { text, value } = tapeText(frame.told, event, namesOf(context));
  return {
    text: value === undefined ? text : `${text}, ${value}`,
    ...defined({ undo: undoOf(frame, context, event.seq, current) }),
  };
}

/** The first lines of a step: what was kept, what is next, and the answer. */
export function barOf(
  frame: CallFrame,
  context: CallContext,
  current: string,
  of: { readonly lead: LeadParts['lead']; readonly next: ButtonData | undefined },
): Component {
  const answer = answerOf(frame, context, current, of.lead);
  return {
    template: '/parts/bar',
    data: defined({
      kept: keptOf(frame, context, current),
      next: nextOf(frame, context, current, { own: of.next, beside: answer !== undefined }),
      answer,
    }),
  };
}
