import { keysOf, VALVES, valveSaid } from '../../../../shared/schemas/words.ts';
import type { ValvePlace } from '../evidence.ts';
import { listed } from './said.ts';

/** `1, 2 and 3 intake and 1 exhaust`: each valve once, by its kind. */
export function valvesSaid(places: readonly ValvePlace[]): string {
  return listed(
    keysOf(VALVES).flatMap((name) => {
      const cylinders = places.flatMap(({ cylinder, valve }) => (valve === name ? [cylinder] : []));
      const each = [...new Set(cylinders)].toSorted((a, b) => a - b);
      return each.length === 0 ? [] : [`${listed(each.map(String))} ${valveSaid(name)}`];
    }),
  );
}
