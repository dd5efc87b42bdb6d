import { defined } from '../../../../shared/defined.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { byText } from '../../kit/by-text.ts';
import { medianKnown } from '../../valve-sheet/siblings.ts';
import type { Subject } from '../assessment.ts';
import { forSide } from '../common/plans.ts';
import { byPlace, placeOf, valveSubject } from '../common/said.ts';
import { valveNames } from '../common/valve-names.ts';
import type { ValveRatio, WithheldRatio } from '../common/valve-ratio.ts';
import type { Evidence, Side, ValvePlace } from '../evidence.ts';
import { gapCells } from '../sheet/rows/cells.ts';
import type { SheetRow } from '../sheet/rows/rows.ts';
import { deniesStated } from './denied.ts';
import { type ReadAsOne, readAsOne } from './read-as-one.ts';

/** Ratios that were read: those to calculate with, and those whose word is withheld. */
interface RatiosRead {
  readonly ratios: readonly ValveRatio[];
  readonly withheld: readonly WithheldRatio[];
}

/** One valve, or a side while none of its valves was read. */
export interface Spot {
  readonly side: Side;
  readonly place?: ValvePlace;
  readonly about: Subject;
  /** Of several that were read alike one that stands for them: lash and stamp are those of each. */
  readonly like?: ValvePlace;
  readonly row?: SheetRow;
  readonly ratios: readonly ValveRatio[];
  /** Read on it, and not to be calculated with yet. */
  readonly withheld: readonly WithheldRatio[];
  readonly lobeLift?: number;
  /** Of valves that nothing was read of: the ratios of those of their side that were. */
  readonly siblings: readonly ValveRatio[];
}

function lobeOf(evidence: Evidence, side: Side, rows: readonly SheetRow[], ratios: readonly ValveRatio[]) {
  const [first] = ratios.toSorted((a, b) => byText(a.setUpId, b.setUpId));
  const read = rows.flatMap(({ lobe }) => lobe?.value ?? []);
  return first?.lobeLift ?? medianKnown(read) ?? evidence.card[side].lobeLift;
}

function spotOf(
  evidence: Evidence,
  side: Side,
  place: ValvePlace | undefined,
  rows: readonly SheetRow[],
  { ratios, withheld }: RatiosRead,
): Spot {
  const row = place === undefined ? undefined : rows.find((each) => placeOf(each) === placeOf(place));
  const own = place === undefined ? [] : ratios.filter((each) => placeOf(each) === placeOf(place));
  const lobes =
    place === undefined
      ? rows.filter(({ valve }) => sideOfValve(valve) === side)
      : row === undefined
        ? []
        : [row];
  const lobeLift = lobeOf(evidence, side, lobes, own);
  return {
    side,
    about: place === undefined ? { of: 'side', valve: side } : valveSubject(place),
    ratios: own,
    withheld: place === undefined ? [] : withheld.filter((each) => placeOf(each) === placeOf(place)),
    ...defined({ place, row, lobeLift }),
    siblings: [],
  };
}

/** As many as the side has; of an engine whose cylinders nobody counted none is. */
function isWhole(evidence: Evidence, side: Side, places: readonly ValvePlace[]): boolean {
  const { cylinders } = evidence.engine;
  const each = valveNames(evidence).filter((name) => sideOfValve(name) === side).length;
  return cylinders !== undefined && places.length >= cylinders * each;
}

/** Valves of a side that nothing was read of keep what is known without a reading: one valve says nothing of the others. */
function hasOthers(evidence: Evidence, side: Side, places: readonly ValvePlace[]): boolean {
  const { soldAs, family, planned, alsoPlanned = [] } = forSide(evidence, side).rockers;
  const isStated = [soldAs, family, planned, ...alsoPlanned].some((each) => each !== undefined);
  return isStated && !isWhole(evidence, side, places);
}

/** Their lobe is the card's: a lobe that was read is of its own valve. */
const ofOthers = (spot: Spot, { card }: Evidence, siblings: readonly ValveRatio[]): Spot => ({
  ...spot,
  siblings,
  about: { of: 'side', valve: spot.side, others: true },
  ...defined({ lobeLift: card[spot.side].lobeLift }),
});

/** Those that the sheet read alike, with what it read. */
const ofAlike = (
  spot: Spot,
  { places: [like], ratios: [first, ...others] }: ReadAsOne,
  more: boolean,
): Spot => ({
  ...spot,
  about: { of: 'side', valve: spot.side, ...(more ? { others: true } : {}) },
  ratios: [first, ...others].flatMap((each) => each ?? []),
  ...defined({ like, lobeLift: first?.lobeLift }),
});

const placesIn = (read: readonly ValvePlace[]): ValvePlace[] => [
  ...new Map(
    read.toSorted(byPlace).map(({ cylinder, valve }) => [placeOf({ cylinder, valve }), { cylinder, valve }]),
  ).values(),
];

/** Nothing is worked out from what the sheet has of it; it is told by itself where that denies what is held of the arm. */
const isTold = (each: WithheldRatio, evidence: Evidence): boolean =>
  each.ofSheet !== true || deniesStated(each, evidence);

/**
 * The valves that something was read of which a change turns on. A side of which nothing was is told as one, and so are
 * those that the sheet read alike, once it has read all that are left.
 */
export function spotsOf(evidence: Evidence, rows: readonly SheetRow[], read: RatiosRead): Spot[] {
  const sides: readonly Side[] = ['intake', 'exhaust'];
  const gapped = [
    ...rows.filter((row) => gapCells(evidence, row).length > 0),
    ...evidence.sheet.filter(({ standing, arms }) => standing && arms === 'before'),
  ];
  const withheld = read.withheld.filter((each) => isTold(each, forSide(evidence, sideOfValve(each.valve))));
  return sides.flatMap((side) => {
    const isHere = ({ valve }: ValvePlace): boolean => sideOfValve(valve) === side;
    const own = placesIn(
      [...read.ratios.filter(({ ofSheet }) => ofSheet !== true), ...withheld, ...gapped].filter(isHere),
    );
    const places = placesIn([...own, ...read.ratios.filter(isHere)]);
    const ofSide =
      evidence.card[side].lobeLift === undefined ? [] : [spotOf(evidence, side, undefined, rows, read)];
    if (places.length === 0) return ofSide;
    const isLeft = hasOthers(evidence, side, places);
    const onSheet = places.filter((place) => !own.some((each) => placeOf(each) === placeOf(place)));
    const alike = !isWhole(evidence, side, places)
      ? undefined
      : readAsOne(evidence, side, onSheet, read.ratios);
    const told = places.filter((place) => alike?.places.includes(place) !== true);
    return [
      ...told.map((place) => spotOf(evidence, side, place, rows, read)),
      ...(alike === undefined
        ? []
        : [ofAlike(spotOf(evidence, side, undefined, rows, read), alike, told.length > 0)]),
      ...(isLeft ? ofSide.map((spot) => ofOthers(spot, evidence, read.ratios.filter(isHere))) : []),
    ];
  });
}
