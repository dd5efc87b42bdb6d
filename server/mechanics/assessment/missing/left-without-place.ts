import type { Subject } from '../assessment.ts';
import { placeOf } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { MUST, type Need, need } from './need.ts';

/** Half of a swap is on record: one arm was put where another sat, and its own place has none since. */
export function leftWithoutPlace({ arms, seats, sat = [] }: Evidence): Need[] {
  return arms.flatMap(({ id, name }) => {
    const own = sat.findLast(({ armId }) => armId === id);
    if (own === undefined || seats.some(({ armId }) => armId === id)) return [];
    const there = seats.find((seat) => placeOf(seat) === placeOf(own));
    const from = sat.filter(({ armId }) => armId === there?.armId).at(-2);
    if (from === undefined || seats.some((seat) => placeOf(seat) === placeOf(from))) return [];
    const about: Subject = { of: 'arm', armId: id, name };
    return [
      need(`place-of:${id}`, `where ${name} sits now`, `Say where ${name} sits now.`, false, {
        ...MUST,
        begun: true,
        about,
        at: { step: 'parts', field: 'armId' },
      }),
    ];
  });
}
