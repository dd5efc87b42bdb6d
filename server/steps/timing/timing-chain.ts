import { z } from 'zod';
import { angle } from '../../../shared/schemas/quantity-fields.ts';
import { SIDES } from '../../../shared/sides.ts';
import type { Side } from '../../mechanics/assessment/evidence.ts';
import { isPointerOut } from '../../mechanics/assessment/timing/readings.ts';
import { DEGREE } from '../../mechanics/setting-order/timing.ts';
import type { Working } from '../../records/workings/workings.ts';

const degrees = z.object({ value: z.number() }).transform(({ value }) => value);
const resultOf = <Shape extends z.ZodRawShape>(shape: Shape) => z.object({ result: z.object(shape) });

const stopAnswer = resultOf({ correction: degrees, trueReading: degrees });
const peakInputs = z.object({
  side: z.enum(['intake', 'exhaust']).default('intake'),
  opens: z.unknown().optional(),
  pointerOff: z.unknown().optional(),
});
const peakAnswer = resultOf({
  centreline: degrees,
});

/** The two readings at the stop as they were kept last: how much the wheel reads too much after TDC, in degrees. */
interface KeptStop {
  readonly working: Working;
  readonly correction: number;
  /** What both sides read once the pointer stands right. */
  readonly trueReading: number;
  /** Further than a wheel is read, as the assessment has it. */
  readonly isOut: boolean;
}

/** A centreline kept last of one side, from readings or from events; degrees. */
export interface KeptPeak {
  readonly working: Working;
  readonly side: Side;
  readonly centreline: number;
  /** The pointer was left where it was, and its error was taken off. */
  readonly righted: boolean;
  /** What was said of the pointer with it; left out where nobody said. */
  readonly pointer: 'left' | 'moved' | undefined;
}

/** What of the timing is kept already, each feeding the next. */
export interface Chain {
  readonly stop: KeptStop | undefined;
  readonly peaks: readonly KeptPeak[];
  readonly events: readonly KeptPeak[];
}

/** An error was taken off; one of zero only says that the pointer had been moved. */
function isOff(pointerOff: unknown): boolean {
  const { data } = angle('').safeParse(pointerOff);
  return data !== undefined && data !== 0;
}

function peakOf(working: Working, side: Side, fromEvents: boolean): KeptPeak | undefined {
  if (working.computation !== 'centreline') return undefined;
  const inputs = peakInputs.safeParse(working.inputs);
  const answer = peakAnswer.safeParse(working.answer);
  if (!inputs.success || !answer.success) return undefined;
  if (inputs.data.side !== side || (inputs.data.opens !== undefined) !== fromEvents) return undefined;
  const { centreline } = answer.data.result;
  return {
    working,
    side,
    centreline,
    righted: isOff(inputs.data.pointerOff),
    pointer:
      inputs.data.pointerOff === undefined ? undefined : isOff(inputs.data.pointerOff) ? 'left' : 'moved',
  };
}

function lastPeaks(workings: readonly Working[], fromEvents: boolean): KeptPeak[] {
  return SIDES.flatMap((side) => {
    const last = workings
      .toReversed()
      .map((working) => peakOf(working, side, fromEvents))
      .find((peak) => peak !== undefined);
    return last === undefined ? [] : [last];
  });
}

function stopOf(working: Working): KeptStop | undefined {
  const read = stopAnswer.safeParse(working.answer);
  if (!read.success) return undefined;
  const { correction, trueReading } = read.data.result;
  return { working, correction, trueReading, isOut: isPointerOut(correction * DEGREE) };
}

export function chainOf(workings: readonly Working[]): Chain {
  const stop = workings.findLast(({ computation }) => computation === 'top-dead-centre');
  return {
    stop: stop === undefined ? undefined : stopOf(stop),
    peaks: lastPeaks(workings, false),
    events: lastPeaks(workings, true),
  };
}

/** Degrees as a wheel is read: `102.75`, `0`. */
export const degreesText = (value: number): string =>
  String(Number(value.toFixed(2)))
    .replace('-', '−')
    .replace(/^(−?)0\./, '$1.');
