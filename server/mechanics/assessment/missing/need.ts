import type { Subject } from '../assessment.ts';
import type { Evidence } from '../evidence.ts';

/** One thing that a step asks for. */
export interface Need {
  /** What it is; makes the id, with its step. */
  readonly code: string;
  /** Named as a thing: `the intake lobe lift on the cam card`. */
  readonly what: string;
  /** The same as something to do. */
  readonly ask: string;
  /** As whoever stands at the engine does it, where the desk only asks. */
  readonly askAtBench?: string;
  readonly have: boolean;
  /** The answer of the call waits for it. */
  readonly must: boolean;
  /** It is waited for where the step's own figures are the answer. */
  readonly forAnswer: boolean;
  /** It takes turning the engine. */
  readonly turns: boolean;
  /** Something was read that is of no use before this is known or done: it goes before what was not begun. */
  readonly begun: boolean;
  /** It is set up for, and nothing of it was read yet: whoever stands there reads it before anything is looked up. */
  readonly started: boolean;
  /** What it is asked of, where that is no more than a part of the build. */
  readonly about?: Subject;
  /** Code of the question whose answer gives it. */
  readonly settles?: string;
  /** Entries that are wrong, and that it is to correct. */
  readonly corrects?: readonly string[];
}

type More = Partial<Omit<Need, 'code' | 'what' | 'ask' | 'have'>>;

export const need = (code: string, what: string, ask: string, have: boolean, more: More = {}): Need => ({
  code,
  what,
  ask,
  have,
  must: false,
  forAnswer: false,
  turns: false,
  begun: false,
  started: false,
  ...more,
});

/** The answer waits for it where this step is what the call is about. */
export const ANSWER: More = { forAnswer: true };
export const MUST: More = { must: true };
export const MUST_TURN: More = { must: true, turns: true };
export const TURN: More = { turns: true };

/** The computation was kept with the build, and not only to see what comes out. */
export const worked = ({ workings }: Evidence, name: string): boolean =>
  workings.some(({ computation, onlyWorkedOut }) => computation === name && onlyWorkedOut !== true);
