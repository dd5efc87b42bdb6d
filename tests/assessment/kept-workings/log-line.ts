import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';

let log = 0;
/** A line of the lash log of 2 exhaust, hot, with its nut held: one after the other. */
export const lashOf = (moment: 'found' | 'set', inches: number, day: number): Evidence['lash'][number] => {
  log += 1;
  return {
    id: `lash-${log}`,
    line: 100 + log,
    standing: true,
    cylinder: 2,
    valve: 'exhaust',
    gap: { value: inches * IN },
    readAs: `${inches} in`,
    moment,
    engine: 'hot',
    nut: 'held',
    day: `2026-03-0${day}`,
  };
};
