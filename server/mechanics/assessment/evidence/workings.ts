import type { Side } from './common.ts';
import type { SetEvidence } from './kept-sums.ts';

/* Computations that were kept. */

/** Two readings at the positive stop: how much the wheel reads too much after top dead centre. */
export interface StopEvidence {
  readonly of: 'stop';
  /** The wheel reads so much too much after top dead centre, and as much too little before it. */
  readonly correction: number;
  /** What both sides read once the pointer stands right. */
  readonly trueReading: number;
}

/** Where a lobe peaks, from readings at equal drop or from its events. */
export interface PeakEvidence {
  readonly of: 'peak';
  readonly side: Side;
  readonly fromEvents: boolean;
  /** After top dead centre for an intake, before it for an exhaust. */
  readonly centreline: number;
  /** Between its events, where it was read by them. */
  readonly duration?: number;
  /** What the card says, where that was told with the reading. */
  readonly card?: number;
  readonly cardDuration?: number;
  /** It was said whether the pointer was left: its error, if any, was taken off. */
  readonly righted: boolean;
  /** The error that was taken off, where there was one. */
  readonly pointerOff?: number;
  /** It was said that the pointer had been shifted first: no error was taken off. */
  readonly shifted?: true;
}

/** A computation that was kept with the build; only its figures that others use. */
export interface WorkingEvidence {
  readonly id: string;
  readonly line: number;
  readonly computation: string;
  readonly pivotToTip?: number;
  readonly netLift?: number;
  /** Of a shim that was worked out. */
  readonly lashWanted?: number;
  readonly timing?: StopEvidence | PeakEvidence;
  /** Where both lobes peak by figures of a whole cam: of a card, as far as anybody said. */
  readonly wholeCam?: Readonly<Record<Side, number>>;
  /** What is set, ordered or fitted by it. */
  readonly set?: SetEvidence;
  /** It was answered that no adjuster was turned so far, and its stop was lifted: nothing is told of it any more. */
  readonly onlyWorkedOut?: true;
}
