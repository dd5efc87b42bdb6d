import { allowance } from '../../kit/allowances.ts';
import { isAtLeast, isWithin } from '../../kit/within.ts';
import type { Evidence, Side, StopEvidence } from '../evidence.ts';
import { type HeldPeak, held } from './against-card.ts';
import { degrees, type Lined } from './degrees.ts';

/** A wheel is not read finer than this. */
export const READ = allowance('wheel-read');
/** A centreline by wheel and indicator is good to this, either way. */
export const WHEEL = allowance('wheel');
/** Two centrelines that stand further apart than this are asked about. */
export const APART = 2 * WHEEL;

export { degrees, type Lined };

/** What was read of the timing, in the order in which it was kept. */
export interface TimingRead {
  readonly stops: readonly Lined<StopEvidence>[];
  readonly peaks: readonly HeldPeak[];
}

/** What was read, each lobe held against the card as the build has it now. */
export function readOf(evidence: Evidence): TimingRead {
  const lined = evidence.workings.toSorted((a, b) => a.line - b.line);
  return {
    stops: lined.flatMap(({ id, line, timing }): Lined<StopEvidence>[] =>
      timing?.of === 'stop' ? [{ ...timing, id, line }] : [],
    ),
    peaks: lined.flatMap(({ id, line, timing }): HeldPeak[] =>
      timing?.of === 'peak' ? [held({ ...timing, id, line }, evidence)] : [],
    ),
  };
}

/**
 * The reading at the stop that a peak stands on: the newest. Where that one reads alike only because the pointer was
 * shifted after the peak was kept, it is the one that had it out; a peak that was read after the shift stands on what the
 * stop read since, whenever that was kept.
 */
export function stopFor({ stops }: TimingRead, peak: HeldPeak): Lined<StopEvidence> | undefined {
  const isLast = peak.shifted === true || stops.every(({ line }) => peak.line > line);
  return (isLast ? undefined : stops.findLast((stop) => isOut(stop))) ?? stops.at(-1);
}

/** Those of one lobe. */
export const ofSide = ({ peaks }: TimingRead, side: Side): readonly HeldPeak[] =>
  peaks.filter((peak) => peak.side === side);

/** The pointer is further out than a wheel is read; less than that is nobody’s to shift. */
export const isPointerOut = (correction: number): boolean => isAtLeast(Math.abs(correction), READ);

export const isOut = (stop: StopEvidence | undefined): stop is StopEvidence =>
  stop !== undefined && isPointerOut(stop.correction);

/**
 * The peak with the pointer's error taken off.
 *
 * Equation: an intake is told after top dead centre, where the wheel reads so much too much; an exhaust before it, where
 * it reads as much too little. Either way the cam stands that much earlier.
 */
export function withoutError(peak: HeldPeak, { correction }: StopEvidence): HeldPeak {
  const { side, centreline, advance, mayBe } = peak;
  return {
    ...peak,
    centreline: side === 'intake' ? centreline - correction : centreline + correction,
    ...(advance === undefined ? {} : { advance: advance + correction }),
    mayBe: mayBe.map((each) => each + correction),
    righted: true,
  };
}

/** Off the card by no more than a centreline is good to: which way, or at all, is not known. */
export const isWithinWheel = (advance: number): boolean => isWithin(advance, WHEEL);

/** How the cam stands against its card; empty where the card says nothing. */
export function againstSaid(advance: number | undefined): string {
  if (advance === undefined) return '';
  if (Math.abs(advance) < READ) return 'straight up, as the card has it';
  if (isWithinWheel(advance)) return 'level with the card, as near as a wheel is read';
  return `${degrees(advance)}° ${advance > 0 ? 'advanced' : 'retarded'} against the card`;
}
