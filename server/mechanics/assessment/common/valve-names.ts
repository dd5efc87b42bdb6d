import { keysOf, sideOfValve, VALVES, type ValveName } from '../../../../shared/schemas/words.ts';
import type { Evidence } from '../evidence.ts';

/** Which of its kind in the cylinder: 1 for `intake`, 2 for `intake-2`. */
const placeOfKind = (name: ValveName): number => Number(/-(\d)$/.exec(name)?.[1] ?? 1);

/** The valves that each cylinder has: one of each kind, unless more were said. */
export function valveNames({
  engine: { intakeValves = 1, exhaustValves = 1 },
}: Pick<Evidence, 'engine'>): ValveName[] {
  const most = { intake: intakeValves, exhaust: exhaustValves };
  return keysOf(VALVES)
    .filter((name) => placeOfKind(name) <= most[sideOfValve(name)])
    .toSorted((a, b) => Number(sideOfValve(a) === 'exhaust') - Number(sideOfValve(b) === 'exhaust'));
}
