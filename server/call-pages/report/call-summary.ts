import type { StopFlag } from '../../../views/pages/report/pieces.ts';
import type { CallContext } from '../../call/context.ts';
import { openPromises, promiseState } from '../../call/promises.ts';
import type { OpenStep } from '../../call/step.ts';
import type { AssessedQuestion } from '../../mechanics/assessment/assessment.ts';
import { subjectSaid, upperFirst } from '../../mechanics/assessment/common/said.ts';
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

/** Of readings and figures alone; while something is asked that is said too, for then not all is known. */
export const nothingMissing = ({ assessment }: CallContext): string =>
  assessment.questions.some(({ answered }) => answered === undefined)
    ? 'No reading is missing; what is asked is still open.'
    : 'Nothing that this call asks for.';

/** The one thing worth most now. */
export const nextSentences = ({ context }: WholeCall): string[] =>
  context.assessment.next === undefined ? ['The call is closed.'] : [context.assessment.next.sentence];

/** What is missing for what the call is about. */
export const missingSentences = ({ context }: WholeCall): string[] =>
  context.assessment.missing.map(({ sentence }) => sentence);

/** Of a long list of open questions these are read out; the rest are counted. */
const MOST_QUESTIONS = 3;

const askedOf = ({ about, ask }: AssessedQuestion): string =>
  about.of === 'build' ? ask : `${upperFirst(subjectSaid(about))}: ${ask}`;

/** What was asked and nobody has answered yet, the strong doubts first. */
export function openQuestions({ assessment }: CallContext): string[] {
  const open = assessment.questions.filter(({ answered }) => answered === undefined);
  const strongFirst = [
    ...open.filter(({ weight }) => weight === 'strong'),
    ...open.filter(({ weight }) => weight === 'weak'),
  ];
  const more = open.length - MOST_QUESTIONS;
  const counted =
    more < 1 ? [] : [more === 1 ? 'One more question is open.' : `${more} more questions are open.`];
  return [...strongFirst.slice(0, MOST_QUESTIONS).map(askedOf), ...counted];
}

/** The answer in one line for each thing that was read or asked: what the call is about first. */
export const foundSentences = ({ context }: WholeCall): string[] =>
  context.assessment.headlines.map(({ sentence }) => sentence);

/** What was promised and is not done yet. */
export const promiseLines = ({ context }: WholeCall): string[] =>
  openPromises(context.notes).map((note) => `${note.body}: ${promiseState(note)}.`);
