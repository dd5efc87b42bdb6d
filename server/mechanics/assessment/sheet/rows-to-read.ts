import { keysOf, sideOfValve, VALVES, valveSaid } from '../../../../shared/schemas/words.ts';
import { SIDES } from '../../../../shared/sides.ts';
import { byPlace, placeOf } from '../common/said.ts';
import { valveNames } from '../common/valve-names.ts';
import type { Evidence, Side, ValvePlace } from '../evidence.ts';
import { setUpsNow } from '../ratio/set-ups.ts';

interface Lift extends ValvePlace {
  readonly at: 'lobe' | 'valve';
}

/** Every lift that was read of a valve, on the sheet or in a set-up. */
function liftsOf(evidence: Evidence): Lift[] {
  const { sheet, passes } = evidence;
  const setUps = setUpsNow(evidence);
  const ofSheet = sheet.flatMap(({ standing, arms, kind, cylinder, valve }): Lift[] =>
    standing && arms === 'these' && kind.endsWith('-lift')
      ? [{ cylinder, valve, at: kind === 'lobe-lift' ? 'lobe' : 'valve' }]
      : [],
  );
  const ofSetUps = passes.flatMap(({ standing, setUpId, kind }): Lift[] => {
    const setUp = setUps.find(({ id }) => id === setUpId);
    if (!standing || setUp === undefined || (kind !== 'lobe-lift' && kind !== 'valve-lift')) return [];
    const { cylinder, valve } = setUp;
    return [{ cylinder, valve, at: kind === 'lobe-lift' ? 'lobe' : 'valve' }];
  });
  return [...ofSheet, ...ofSetUps];
}

/** Valves are being set against each other: on the sheet, or by set-ups on more than one of them. */
export function isBegun(evidence: Evidence): boolean {
  const onSheet = evidence.sheet.some(
    ({ standing, kind }) => standing && (kind === 'lobe-lift' || kind === 'valve-lift'),
  );
  return onSheet || new Set(liftsOf(evidence).map(placeOf)).size > 1;
}

/** Valves of a side that was begun whose lift was not read yet: one is told from its siblings when all are read. */
export function valvesToRead(evidence: Evidence): ValvePlace[] {
  const lifts = liftsOf(evidence);
  const cylinders = Math.max(evidence.engine.cylinders ?? 0, ...lifts.map(({ cylinder }) => cylinder));
  const read = new Set(lifts.filter(({ at }) => at === 'valve').map(placeOf));
  return valveNames(evidence)
    .filter((name) => lifts.some(({ valve }) => sideOfValve(valve) === sideOfValve(name)))
    .flatMap((valve) => Array.from({ length: cylinders }, (_, index) => ({ cylinder: index + 1, valve })))
    .filter((place) => !read.has(placeOf(place)))
    .sort(byPlace);
}

/** Fewer lifts than this have no middle. */
const FEWEST = 3;

/** Sides that were begun, and of which too few valves were read to tell which of them is off. */
export function sidesOfFew(evidence: Evidence): Side[] {
  const lifts = liftsOf(evidence);
  return SIDES.filter((side) => {
    const own = lifts.filter(({ valve }) => sideOfValve(valve) === side);
    const read = new Set(own.filter(({ at }) => at === 'valve').map(placeOf)).size;
    return own.length > 0 && read < FEWEST;
  });
}

/** `2, 3 and 7 intake` */
export function placesSaid(places: readonly ValvePlace[]): string {
  const sides = keysOf(VALVES).flatMap((name) => {
    const numbers = places.filter(({ valve }) => valve === name).map(({ cylinder }) => String(cylinder));
    const last = numbers.pop();
    if (last === undefined) return [];
    return [`${numbers.length === 0 ? last : `${numbers.join(', ')} and ${last}`} ${valveSaid(name)}`];
  });
  return sides.join('; ');
}
