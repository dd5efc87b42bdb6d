import type { CallContext } from '../../call/context.ts';
import { openPromises, promiseState } from '../../call/promises.ts';
import type { OpenStep, StepFindings } from '../../call/step.ts';
import { type CallFrame, lacksOf, nextStep } from '../frame.ts';

/** A call in whole, for the sheets that tell it from beginning to end. */
export interface WholeCall {
  readonly frame: CallFrame;
  readonly context: CallContext;
  readonly open: ReadonlyMap<string, OpenStep>;
  readonly findings: ReadonlyMap<string, StepFindings>;
}

/** Whether somebody has to stop, and why. */
export function stopFlag({ context, findings }: WholeCall): { stands: boolean; word: string; text: string } {
  if (context.call.held)
    return {
      stands: true,
      word: 'Stop: nobody turns it.',
      text: context.call.holdReason || 'The reason was not said.',
    };
  const [first] = [...findings.values()].flatMap(({ stop }) => stop);
  return first === undefined
    ? { stands: false, word: 'No stop is set.', text: 'Any resistance: stop, back off, find out.' }
    : { stands: true, word: 'Stop:', text: first };
}

const MOST_NEXT = 2;

/** The next reading, of the step that the call is about first; the step that is open where none is worth more. */
export function nextSentences({ frame, context, findings }: WholeCall): string[] {
  if (context.call.held) return ['Photographs only, until the desk lifts the hold.'];
  const { own } = context.plan;
  const about = own === undefined ? [] : (findings.get(own)?.next ?? []);
  const others = frame.steps
    .filter(({ name }) => name !== own)
    .toReversed()
    .flatMap(({ name }) => findings.get(name)?.next ?? []);
  const wanted = [...about, ...others].slice(0, MOST_NEXT);
  if (wanted.length > 0) return wanted;
  const next = nextStep(frame, context);
  return [`${next.step.words.link}. ${next.why}`];
}

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** What is missing, as sentences: what is wanted in one, and each question by itself. */
export function missingSentences({ frame, context, findings }: WholeCall): string[] {
  const needs = lacksOf(frame, context).map(({ text }) => text);
  const isQuestion = (text: string) => text.endsWith('?');
  const gaps = [...findings.values()].flatMap(({ notKnown }) => notKnown);
  const wanted = needs.filter((text) => !isQuestion(text)).join('; ');
  return [...(wanted === '' ? [] : [`${sentence(wanted)}.`]), ...needs.filter(isQuestion), ...gaps];
}

/** What was promised and is not done yet. */
export const promiseLines = ({ context }: WholeCall): string[] =>
  openPromises(context.notes).map((note) => `${note.body}: ${promiseState(note)}.`);
