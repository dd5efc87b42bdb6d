import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { leftToReadOnNow } from '../change/read-with-off.ts';
import type { Evidence, Side } from '../evidence.ts';
import { MUST_TURN, type Need, need, TURN } from './need.ts';

/** It was read on the engine itself: what it would be calculated from is not asked for any more. */
const isRead = ({ sheet, scans = [] }: Evidence, side: Side): boolean =>
  scans.some(({ standing, valve }) => standing && sideOfValve(valve) === side) ||
  sheet.some(
    ({ standing, valve, kind }) => standing && kind === 'piston-to-valve' && sideOfValve(valve) === side,
  );

/** What the gaps before and after are made of. */
export function ofConsequences(evidence: Evidence, measured: boolean): Need[] {
  const { springs, taken, rockers } = evidence;
  const left = leftToReadOnNow(evidence);
  return [
    ...(left === undefined
      ? []
      : [
          need(
            'read-on-now',
            `${left} with the arms that are on now`,
            `Read ${left} with the arms that are on now.`,
            false,
            MUST_TURN,
          ),
        ]),
    need(
      'ratio',
      'a ratio to calculate with, measured or planned',
      'Read the ratio of the rockers, or say which is planned.',
      measured ||
        rockers.planned !== undefined ||
        rockers.plannedExhaust !== undefined ||
        rockers.soldAs !== undefined,
      MUST_TURN,
    ),
    need(
      'retainer-to-seal',
      'retainer to seal with the valve shut',
      'Measure retainer to seal with the valve shut.',
      springs.retainerToSeal !== undefined,
      { at: { step: 'build', field: 'springs.retainerToSeal' } },
    ),
    ...(['intake', 'exhaust'] as const).map((side) =>
      need(
        `closed-gap-${side}`,
        `the ${side} valve to piston with the valve shut, at top dead centre`,
        `Measure the ${side} valve to piston with the valve shut, at top dead centre.`,
        taken[side].closedGapAtTdc !== undefined || isRead(evidence, side),
        { ...TURN, at: { field: `clearances.${side}.closedGapAtTdc` } },
      ),
    ),
  ];
}
