import type { Evidence, StopEvidence } from '../evidence.ts';
import { degrees, isOfOldPointer, READ, readOf } from '../timing/read.ts';
import { MUST_TURN, type Need, need, worked } from './need.ts';

/** The reading at the stop that was kept last, where the pointer stood out and nothing took its error off since. */
function pointerOf({ stop, all }: ReturnType<typeof readOf>): StopEvidence | undefined {
  if (stop === undefined || Math.abs(stop.correction) < READ || all.at(-1)?.righted === true)
    return undefined;
  return stop;
}

function pointerNeed(read: ReturnType<typeof readOf>): Need[] {
  const stop = pointerOf(read);
  if (stop === undefined) return [];
  const by = degrees(stop.correction);
  const toward = stop.correction > 0 ? 'after' : 'before';
  return [
    need(
      'pointer',
      'the pointer set by the stop, and read there once more',
      `Move the pointer ${by}° toward the reading ${toward} TDC. Then read the wheel at the stop both ways again, until both are alike.`,
      false,
      MUST_TURN,
    ),
  ];
}

export function ofTiming(evidence: Evidence): Need[] {
  const read = readOf(evidence);
  const isOld = read.peaks.some((peak) => isOfOldPointer(peak, read.stops));
  return [
    need(
      'top-dead-centre',
      'both readings at the positive stop',
      'Read the wheel at the positive stop, one way and the other.',
      worked(evidence, 'top-dead-centre'),
      MUST_TURN,
    ),
    ...pointerNeed(read),
    need(
      'centreline',
      'the centreline, from equal drop or from events',
      'Read the wheel at equal drop either side of the peak.',
      worked(evidence, 'centreline') && !isOld,
      MUST_TURN,
    ),
  ];
}
