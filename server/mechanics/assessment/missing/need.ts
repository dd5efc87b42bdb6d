import type { StepName } from '../assessment.ts';

/** One thing that a step asks for. */
export interface Need {
  /** What it is; makes the id, with its step. */
  readonly code: string;
  /** Named as a thing: `the intake lobe lift on the cam card`. */
  readonly what: string;
  /** The same as something to do. */
  readonly ask: string;
  readonly have: boolean;
  /** The answer of the call waits for it. */
  readonly must: boolean;
  /** It takes turning the engine. */
  readonly turns: boolean;
}

export type NeedsOfSteps = Readonly<Partial<Record<StepName, readonly Need[]>>>;

type More = Partial<Pick<Need, 'must' | 'turns'>>;

export const need = (code: string, what: string, ask: string, have: boolean, more: More = {}): Need => ({
  code,
  what,
  ask,
  have,
  must: false,
  turns: false,
  ...more,
});

export const MUST: More = { must: true };
export const MUST_TURN: More = { must: true, turns: true };
export const TURN: More = { turns: true };
