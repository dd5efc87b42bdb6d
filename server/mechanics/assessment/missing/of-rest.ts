import { planOf } from '../../../../shared/schemas/goals.ts';
import type { Evidence } from '../evidence.ts';
import { isBegun, placesSaid, valvesToRead } from '../sheet/rows-to-read.ts';
import { ANSWER, MUST_TURN, type Need, need, TURN } from './need.ts';

const worked = ({ workings }: Evidence, name: string): boolean =>
  workings.some(({ computation }) => computation === name);

export function ofSheet(evidence: Evidence): Need[] {
  const begun = isBegun(evidence);
  const toRead = begun ? valvesToRead(evidence) : [];
  return [
    need(
      'valves',
      'lobe lift and valve lift, valve by valve',
      'Read lobe and valve lift of every valve, one after the other, the same way each time.',
      begun,
      { ...ANSWER, ...TURN },
    ),
    ...(toRead.length === 0
      ? []
      : [
          need(
            'rows',
            `the valve lift of ${placesSaid(toRead)}`,
            `Read the valve lift of ${placesSaid(toRead)}, the same way as the others.`,
            false,
            { ...ANSWER, ...TURN },
          ),
        ]),
  ];
}

/** What the gaps before and after are made of. */
export function ofConsequences(evidence: Evidence, measured: boolean): Need[] {
  const { springs, taken, rockers } = evidence;
  return [
    need(
      'ratio',
      'a ratio to calculate with, measured or planned',
      'Read the ratio of the rockers, or say which is planned.',
      measured || rockers.planned !== undefined || rockers.soldAs !== undefined,
      MUST_TURN,
    ),
    need(
      'retainer-to-seal',
      'retainer to seal with the valve shut',
      'Measure retainer to seal with the valve shut.',
      springs.retainerToSeal !== undefined,
    ),
    ...(['intake', 'exhaust'] as const).map((side) =>
      need(
        `closed-gap-${side}`,
        `the ${side} valve to piston with the valve shut, at top dead centre`,
        `Measure the ${side} valve to piston with the valve shut, at top dead centre.`,
        taken[side].closedGapAtTdc !== undefined,
        TURN,
      ),
    ),
  ];
}

export function ofGeometry(evidence: Evidence): Need[] {
  const { tipMarks, card, rockers } = evidence;
  const lift = card.intake.lobeLift ?? card.exhaust.lobeLift;
  const ratio = rockers.planned ?? rockers.soldAs;
  const known = rockers.pivotToTip !== undefined && ratio !== undefined && lift !== undefined;
  return [
    need(
      'tip-mark',
      'a tip mark: its width, then its place',
      'Ink the tip, turn twice by hand on a light spring, and measure the mark: width first, then its place.',
      tipMarks.some(({ standing }) => standing),
      MUST_TURN,
    ),
    need(
      'least-sweep',
      'pivot to tip and lift, for the least sweep',
      'Measure pivot to tip, for the least sweep.',
      known || worked(evidence, 'roller-sweep'),
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
  need(
    'centreline',
    'the centreline, from equal drop or from events',
    'Read the wheel at equal drop either side of the peak.',
    worked(evidence, 'centreline'),
    MUST_TURN,
  ),
];

export const ofAdjuster = (evidence: Evidence): Need[] => [
  need(
    'lash',
    'a lash as it was found or set',
    'Read the lash as it is found, before anything is set, and look whether the nut has moved.',
    evidence.lash.some(({ standing }) => standing),
    MUST_TURN,
  ),
  // Setting a noisy one again hides it: there the log is asked for, not the turns.
  ...(planOf(evidence.call.goal).logFirst
    ? []
    : [
        need(
          'turns',
          'what the turns of the adjuster do',
          'Give thread and turns of the adjuster.',
          worked(evidence, 'adjuster'),
        ),
      ]),
];
