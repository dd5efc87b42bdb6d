import type { Evidence } from '../evidence.ts';
import { MUST_TURN, type Need, need, TURN, worked } from './need.ts';

/** Of a follower under the cam the arms are asked for, in place of marks and sweep. */
const followerNeeds = (evidence: Evidence): Need[] =>
  ['finger-follower', 'cam-rocker'].includes(evidence.engine.gear ?? 'pushrod')
    ? [
        need(
          'follower-arms',
          'the arms of the follower: valve shut, and at full lift',
          'Measure the follower’s arms from the pivot’s middle, valve shut and at full lift.',
          worked(evidence, 'follower-ratio'),
          // While no mark was read either, the call that is about its geometry waits for this.
          {
            ...(evidence.tipMarks.some(({ standing }) => standing) ? TURN : MUST_TURN),
            at: { part: 'follower-ratio' },
          },
        ),
      ]
    : [];

export function ofGeometry(evidence: Evidence): Need[] {
  const { tipMarks, card, rockers } = evidence;
  const lift = card.intake.lobeLift ?? card.exhaust.lobeLift;
  const ratio = rockers.planned ?? rockers.plannedExhaust ?? rockers.soldAs;
  const known = rockers.pivotToTip !== undefined && ratio !== undefined && lift !== undefined;
  return [
    ...followerNeeds(evidence),
    need(
      'tip-mark',
      'a tip mark: its width, then its place',
      'Ink the tip, turn twice by hand on a light spring, and measure the mark: width first, then its place.',
      tipMarks.some(({ standing }) => standing),
      { ...MUST_TURN, at: { part: 'marks' } },
    ),
    need(
      'least-sweep',
      'pivot to tip and lift, for the least sweep',
      'Measure pivot to tip, for the least sweep.',
      known || worked(evidence, 'roller-sweep'),
      { at: { part: 'roller-sweep', field: rockers.pivotToTip === undefined ? 'pivotToTip' : 'netLift' } },
    ),
  ];
}
