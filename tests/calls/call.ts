import type { Entry } from './entry.ts';

/** A call as the desk hears it, and what must be said of it. Figures, parts and people are invented. */
export interface Call {
  /** What the caller says. */
  readonly said: string;
  readonly goal: string;
  readonly entries: readonly Entry[];
  readonly expected: Expected;
}

export interface Expected {
  /** Word by what it is against and where: `mark 1-intake`, `coil-bind intake`; `undefined` where none may stand. */
  readonly words?: Readonly<Record<string, string | undefined>>;
  /** Figures by the id of their quantity, in the unit it goes out in; to half of the last digit given. */
  readonly figures?: Readonly<Record<string, string>>;
  /** One headline holds this. */
  readonly headline?: RegExp;
  /** Codes of questions that are asked, and of ones that are not. */
  readonly asks?: readonly string[];
  readonly asksNot?: readonly string[];
  /** The action that is next. */
  readonly next: string | RegExp | undefined;
  /** What stops it: a part of each reason; left out, nothing does. */
  readonly stop?: readonly RegExp[];
  /** Said somewhere, and nowhere. */
  readonly says?: readonly RegExp[];
  readonly never?: readonly RegExp[];
}
