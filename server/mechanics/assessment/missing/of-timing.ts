import type { Evidence } from '../evidence.ts';
import { MUST, MUST_TURN, type Need, need, worked } from './need.ts';

export const ofTiming = (evidence: Evidence): Need[] => [
  need(
    'top-dead-centre',
    'both readings at the positive stop',
    'Read the wheel at the positive stop, one way and the other.',
    worked(evidence, 'top-dead-centre'),
    MUST_TURN,
  ),
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
