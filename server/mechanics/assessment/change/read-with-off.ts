import { GAP_KINDS, SHEET_KINDS } from '../../../../shared/schemas/sheet.ts';
import { plansOf } from '../common/plans.ts';
import { byPlace, listed, placeOf } from '../common/said.ts';
import { isOffSince } from '../common/seats.ts';
import type { Evidence, SheetEvidence, ValvePlace } from '../evidence.ts';
import { setUpsNow } from '../ratio/read/set-ups.ts';
import { withScans } from '../scans/as-gap.ts';
import { placesSaid } from '../sheet/rows/rows-to-read.ts';
import { soldThen, withSoldThen } from './sold-then.ts';

const placesOf = (places: readonly ValvePlace[]): string =>
  listed([...new Set(places.toSorted(byPlace).map(placeOf))]);

const eachOnce = (places: readonly ValvePlace[]): ValvePlace[] => [
  ...new Map(places.toSorted(byPlace).map((place) => [placeOf(place), place])).values(),
];

/** Gaps of arms that are off, none of which was read since. */
function gapsLeft(evidence: Evidence): string | undefined {
  const isOff = (entry: SheetEvidence): boolean =>
    isOffSince(entry, evidence) || soldThen(entry, evidence) !== undefined;
  const gaps = evidence.sheet.filter(({ standing, arms }) => standing && arms === 'these');
  for (const kind of GAP_KINDS) {
    const own = gaps.filter((each) => each.kind === kind);
    const isRead = new Set(own.filter((each) => !isOff(each)).map(placeOf));
    const left = own.filter((each) => !isRead.has(placeOf(each)));
    if (left.length > 0) return `${SHEET_KINDS[kind].toLowerCase()} of ${placesOf(left)}`;
  }
  return undefined;
}

/** Ratios of arms that are off, where none was read since. */
function ratiosLeft(evidence: Evidence): string | undefined {
  const ofThen = withSoldThen(evidence);
  const setUps = setUpsNow(ofThen).filter(({ id }) =>
    evidence.passes.some(
      ({ standing, setUpId, kind }) => standing && setUpId === id && kind === 'valve-lift',
    ),
  );
  const lifts = ofThen.sheet.filter(
    ({ standing, arms, kind }) => standing && arms === 'these' && kind === 'valve-lift',
  );
  const read = [...setUps, ...lifts];
  const off = read.filter((each) => each.soldAsThen !== undefined || isOffSince(each, evidence));
  return off.length > 0 && off.length === read.length
    ? `the ratio of ${placesSaid(eachOnce(off))}`
    : undefined;
}

/** What was read with the arms that are off and not yet with those that are on: after a change that is what counts. */
export function leftToReadOnNow(evidence: Evidence): string | undefined {
  if (evidence.call.goal !== 'clearances-after-a-change' || plansOf(evidence).length > 0) return undefined;
  return gapsLeft(withScans(evidence)) ?? ratiosLeft(evidence);
}
