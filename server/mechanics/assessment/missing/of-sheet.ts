import { isSolidLifter } from '../../../../shared/lifters.ts';
import type { Evidence } from '../evidence.ts';
import { isBegun, placesSaid, sidesOfFew, valvesToRead } from '../sheet/rows/rows-to-read.ts';
import { leftWithoutPlace } from './left-without-place.ts';
import { ANSWER, type Need, need, TURN } from './need.ts';

/** Lifts of valves say with which spring and lifter they were read. */
const howSaid = ({ sheet, engine }: Evidence): boolean =>
  sheet
    .filter(({ standing, kind }) => standing && kind === 'valve-lift')
    .every(
      ({ spring, lifter }) =>
        spring !== 'not-said' && (lifter !== 'not-said' || isSolidLifter(engine.lifter)),
    );

/** Nobody said how many cylinders there are, and fewer valves were read than tell which of them is off. */
const ofFew = (evidence: Evidence): Need[] =>
  evidence.engine.cylinders !== undefined
    ? []
    : sidesOfFew(evidence)
        .slice(0, 1)
        .map((side) =>
          need(
            'rows',
            `the valve lift of more ${side} valves`,
            `Read the valve lift of another ${side} valve, the same way: three or more tell which one is off.`,
            false,
            { ...ANSWER, ...TURN },
          ),
        );

export function ofSheet(evidence: Evidence): Need[] {
  const begun = isBegun(evidence);
  const toRead = begun ? valvesToRead(evidence) : [];
  return [
    ...leftWithoutPlace(evidence),
    need(
      'valves',
      'lobe lift and valve lift, valve by valve',
      'Read lobe and valve lift of every valve, one after the other, the same way each time.',
      // Under a bucket a valve moves as its lobe does: no ratio is read of it, valve by valve.
      begun || evidence.engine.gear === 'bucket',
      { ...ANSWER, ...TURN },
    ),
    ...(howSaid(evidence)
      ? []
      : [
          need(
            'how-read',
            'which spring and lifter the valves were read with',
            'Ask which spring and which lifter were in when the valves were read, and enter it with them.',
            false,
            { askAtBench: 'Say which spring and which lifter were in when the valves were read.' },
          ),
        ]),
    ...(begun && toRead.length === 0 ? ofFew(evidence) : []),
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
