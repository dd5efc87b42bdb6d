import type { Evidence } from '../evidence.ts';
import { degrees, isOut, readOf } from '../timing/readings.ts';
import { MUST, MUST_TURN, type Need, need, worked } from './need.ts';

/** One that is out is shifted, and the stop read until it is alike, before a lobe is read against it. */
function pointerShifted(evidence: Evidence): Need[] {
  const { stops, peaks } = readOf(evidence);
  const stop = stops.at(-1);
  if (!isOut(stop) || peaks.length > 0) return [];
  const off = degrees(stop.correction);
  return [
    need(
      'pointer-shifted',
      'the pointer shifted until the stop reads alike',
      `Shift the pointer ${off}° toward the side ${stop.correction > 0 ? 'after' : 'before'} TDC, and read the stop again until both sides are alike.`,
      false,
      MUST_TURN,
    ),
  ];
}

export const ofTiming = (evidence: Evidence): Need[] => [
  need(
    'top-dead-centre',
    'both readings at the positive stop',
    'Read the wheel at the positive stop, one way and the other.',
    worked(evidence, 'top-dead-centre'),
    MUST_TURN,
  ),
  ...pointerShifted(evidence),
  need(
    'centreline',
    'the centreline, from equal drop or from events',
    'Read the wheel at equal drop either side of the peak.',
    worked(evidence, 'centreline'),
    MUST_TURN,
  ),
  need(
    'card-centreline',
    'the centreline on the cam card',
    'Read the centreline of that lobe off the cam card.',
    evidence.card.intake.centreline !== undefined ||
      evidence.card.exhaust.centreline !== undefined ||
      evidence.workings.some(({ timing }) => timing?.of === 'peak' && timing.advance !== undefined),
    MUST,
  ),
];
