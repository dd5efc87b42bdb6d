import { keysOf, sideOfValve, VALVES } from '../../../../../shared/schemas/words.ts';
import { placeOf } from '../../common/said.ts';
import { valveNames } from '../../common/valve-names.ts';
import type { Evidence, SheetKindName, Side, Spring, ValvePlace } from '../../evidence.ts';

/** How many valves of a side a sentence speaks of, out of those that were read and those that the engine has. */
export interface HowMany {
  readonly count: number;
  /** Read that way, whether they count in it or not. */
  readonly read: number;
  /** What the engine has; left out where its cylinders are not on record. */
  readonly of?: number;
  /** Of those that the sheet lacks, as many were read in set-ups. */
  readonly inSetUps?: number;
}

/** A valve that is entered and that the engine does not have was misnamed: it is asked about, and stands beside no others. */
export const isOfEngine = (evidence: Evidence, { cylinder, valve }: ValvePlace): boolean =>
  cylinder <= (evidence.engine.cylinders ?? Number.POSITIVE_INFINITY) &&
  (valveNames(evidence).includes(valve) || isUnknown(evidence));

/** Nobody said how many valves a cylinder has. */
const isUnknown = ({ engine: { intakeValves, exhaustValves } }: Evidence): boolean =>
  intakeValves === undefined && exhaustValves === undefined;

/** The valves of a side of which this was read in set-ups on that spring. */
function placesInSetUps(
  { setUps, passes }: Evidence,
  side: Side,
  kind: SheetKindName,
  spring: Spring | undefined,
): string[] {
  const own = setUps.filter(
    (setUp) => sideOfValve(setUp.valve) === side && (spring === undefined || setUp.spring === spring),
  );
  return own
    .filter(({ id }) => passes.some((pass) => pass.standing && pass.setUpId === id && pass.kind === kind))
    .map(placeOf);
}

/** Valves of a side of which this was read, and how many of them the engine has. */
export function howMany(
  evidence: Evidence,
  side: Side,
  kind: SheetKindName,
  spring?: Spring,
): Omit<HowMany, 'count'> {
  const { cylinders } = evidence.engine;
  const read = evidence.sheet.filter(
    (each) =>
      each.standing &&
      each.arms === 'these' &&
      each.kind === kind &&
      sideOfValve(each.valve) === side &&
      (spring === undefined || each.spring === spring) &&
      isOfEngine(evidence, each),
  );
  const names = new Set(
    keysOf(VALVES).filter((name) => sideOfValve(name) === side && valveNames(evidence).includes(name)),
  );
  for (const { valve } of read) names.add(valve);
  const onSheet = new Set(read.map(placeOf));
  const inSetUps = new Set(placesInSetUps(evidence, side, kind, spring).filter((at) => !onSheet.has(at)));
  return {
    read: onSheet.size,
    ...(inSetUps.size === 0 ? {} : { inSetUps: inSetUps.size }),
    ...(cylinders === undefined ? {} : { of: cylinders * names.size }),
  };
}

/** Of both sides together. */
export const together = (sides: readonly HowMany[]): HowMany => ({
  count: sides.reduce((sum, { count }) => sum + count, 0),
  read: sides.reduce((sum, { read }) => sum + read, 0),
  ...(sides.some(({ of }) => of === undefined) ? {} : { of: sides.reduce((sum, { of = 0 }) => sum + of, 0) }),
  inSetUps: sides.reduce((sum, { inSetUps = 0 }) => sum + inSetUps, 0),
});

/**
 * `all 8 intakes`; `the 5 intakes read so far (of 8)` while the engine has more; `7 of the 8 intakes` where one that was
 * read is left out. `all` is said of all that the engine has alone.
 */
export function manySaid({ count, read, of, inSetUps = 0 }: HowMany, what = ''): string {
  const named = what === '' ? '' : ` ${what}`;
  if (of !== undefined && read >= of)
    return count === of ? `all ${of}${named}` : `${count} of the ${of}${named}`;
  // Those that the sheet lacks were read in set-ups: none is left to read.
  const isAll = of !== undefined && read + inSetUps >= of;
  const where = isAll ? 'on the sheet' : `read so far${of === undefined ? '' : ` (of ${of})`}`;
  return count === read ? `the ${count}${named} ${where}` : `${count} of the ${read}${named} ${where}`;
}
