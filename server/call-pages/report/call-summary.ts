import type { StopFlag } from '../../../views/pages/report/pieces.ts';
import type { CallContext } from '../../call/context.ts';
import { openPromises, promiseState } from '../../call/promises.ts';
import type { OpenStep } from '../../call/step.ts';
import type { CallFrame } from '../frame.ts';

/** A call in whole, for the sheets that tell it from beginning to end. */
export interface WholeCall {
  readonly frame: CallFrame;
  readonly context: CallContext;
  readonly open: ReadonlyMap<string, OpenStep>;
}

/** Whether somebody has to stop, and every reason why. */
export function stopFlag({ assessment: { stop, notToRun } }: CallContext): StopFlag {
  if (stop.length + notToRun.length === 0)
    return {
      stands: false,
      word: 'No stop is set.',
      text: 'Any resistance: stop, back off, find out.',
      reasons: [],
    };
  const reasons = [...stop, ...notToRun].map(({ sentence, wayOut }) => ({ sentence, wayOut }));
  const fitOnly = stop.length === 0 && notToRun.every(({ what }) => what === 'fit');
  const word = fitOnly ? 'Not to be fitted as planned.' : 'Stop.';
  return { stands: true, word, text: reasons.map(({ sentence }) => sentence).join(' '), reasons };
}

/** The one thing worth most now. */
export const nextSentences = ({ context }: WholeCall): string[] =>
  context.assessment.next === undefined ? ['The call is closed.'] : [context.assessment.next.sentence];

/** What is missing for what the call is about. */
export const missingSentences = ({ context }: WholeCall): string[] =>
  context.assessment.missing.map(({ sentence }) => sentence);

/** The answer in one line for each thing that was read or asked, in the order of the steps. */
export const foundSentences = ({ frame, context }: WholeCall): string[] =>
  frame.steps.flatMap(({ name }) =>
    context.assessment.headlines.filter(({ step }) => step === name).map(({ sentence }) => sentence),
  );

/** What was promised and is not done yet. */
export const promiseLines = ({ context }: WholeCall): string[] =>
  openPromises(context.notes).map((note) => `${note.body}: ${promiseState(note)}.`);
