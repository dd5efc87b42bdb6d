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
  readonly row?: SheetRow;
  readonly ratios: readonly ValveRatio[];
  /** Read on it, and not to be calculated with yet. */
  readonly withheld: readonly WithheldRatio[];
  readonly lobeLift?: number;
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
  };
}

/** Valves of a side that nothing was read of keep what is known without a reading: one valve says nothing of the others. */
function hasOthers(evidence: Evidence, side: Side, places: readonly ValvePlace[]): boolean {
  const { cylinders } = evidence.engine;
  const { soldAs, family, planned, alsoPlanned = [] } = forSide(evidence, side).rockers;
  const isStated = [soldAs, family, planned, ...alsoPlanned].some((each) => each !== undefined);
  const each = valveNames(evidence).filter((name) => sideOfValve(name) === side).length;
  return isStated && (cylinders === undefined || places.length < cylinders * each);
}

/** Their lobe is the card's: a lobe that was read is of its own valve. */
const ofOthers = (spot: Spot, { card }: Evidence): Spot => ({
  ...spot,
  about: { of: 'side', valve: spot.side, others: true },
  ...defined({ lobeLift: card[spot.side].lobeLift }),
});

/** The valves that something was read of which a change turns on; a side of which nothing was is told as one. */
export function spotsOf(evidence: Evidence, rows: readonly SheetRow[], read: RatiosRead): Spot[] {
  const sides: readonly Side[] = ['intake', 'exhaust'];
  const gapped = [
    ...rows.filter((row) => gapCells(evidence, row).length > 0),
    ...evidence.sheet.filter(({ standing, arms }) => standing && arms === 'before'),
  ];
  return sides.flatMap((side) => {
    const here = [...read.ratios, ...read.withheld, ...gapped]
      .filter(({ valve }) => sideOfValve(valve) === side)
      .toSorted(byPlace);
    const places = [
      ...new Map(
        here.map(({ cylinder, valve }) => [placeOf({ cylinder, valve }), { cylinder, valve }]),
      ).values(),
    ];
    const ofSide =
      evidence.card[side].lobeLift === undefined ? [] : [spotOf(evidence, side, undefined, rows, read)];
    if (places.length === 0) return ofSide;
    return [
      ...places.map((place) => spotOf(evidence, side, place, rows, read)),
      ...(hasOthers(evidence, side, places) ? ofSide.map((spot) => ofOthers(spot, evidence)) : []),
    ];
  });
}
