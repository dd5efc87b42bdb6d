import type { Evidence } from '../evidence.ts';
import { isBegun, placesSaid, valvesToRead } from '../sheet/rows-to-read.ts';
import { ANSWER, type Need, need, TURN } from './need.ts';

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
