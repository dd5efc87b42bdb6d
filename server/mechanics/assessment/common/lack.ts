import type { AssessedQuestion } from '../assessment.ts';
import { isAsked } from './is-asked.ts';

/** What a figure of a valve may wait for. */
export type LackCode =
  | 'another-mark'
  | 'another-reading'
  | 'answer'
  | 'arm-on-now'
  | 'card-figure'
  | 'closer-reading'
  | 'first-arm'
  | 'gap-as-felt'
  | 'gap-at-heat'
  | 'gap-measured'
  | 'heat-of-card'
  | 'heat-of-gap'
  | 'input'
  | 'lash-of-ratio'
  | 'lash-of-scan'
  | 'lash-unsaid'
  | 'lifter-sinks'
  | 'light-spring'
  | 'looked-first'
  | 'passes'
  | 'ratio'
  | 'ratio-doubted'
  | 'read-wrong'
  | 'read-or-worked'
  | 'scan-figures'
  | 'scan-onward'
  | 'scan-steps'
  | 'scan-wrong'
  | 'scan-zero-lash'
  | 'shim-fitted'
  | 'shim-of-none'
  | 'spring-heights'
  | 'which-arms'
  | 'which-gap'
  | 'which-lifter'
  | 'which-ratio'
  | 'which-spring'
  | 'with-a-tool'
  | 'with-cam-now'
  | 'zero-lash';

/**
 * What must be known or done before a word stands on a figure, or before it is worked out. Whoever asks what it is asks
 * its code; `said` is for people alone.
 */
export interface Lack {
  readonly code: LackCode;
  /** Named as a thing: it goes on from “it needs” and “first:”. */
  readonly said: string;
  /** Somebody turns or reads for it; else it is said, looked up or entered. */
  readonly turns: boolean;
  /** Code of the question that its answer settles it with. */
  readonly settles?: string;
}

/** It is said, looked up or entered: nothing is turned for it. */
export const toSay = (code: LackCode, said: string, settles?: string): Lack => ({
  code,
  said,
  turns: false,
  ...(settles === undefined ? {} : { settles }),
});

/** It is read or measured at the engine. */
export const toRead = (code: LackCode, said: string): Lack => ({ code, said, turns: true });

/** The answer to a question, in whatever words it is wanted here. */
export const toAnswer = (
  question: Pick<AssessedQuestion, 'code' | 'byLooking'>,
  said: string,
  code: LackCode = 'answer',
): Lack => ({ code, said, turns: !isAsked(question), settles: question.code });

/** Their words, as people are shown them. */
export const lacksSaid = (lacks: readonly Lack[]): string[] => lacks.map(({ said }) => said);
