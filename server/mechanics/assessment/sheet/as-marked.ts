import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { allowance } from '../../kit/allowances.ts';
import { medianKnown } from '../../valve-sheet/siblings.ts';
import type { OddValve, SheetValve } from '../../valve-sheet/types.ts';
import { placeOf } from '../common/said.ts';
import { sameRatio } from '../common/same-ratio.ts';
import type { Evidence, Spring } from '../evidence.ts';
import { bandsOf } from '../ratio/bands.ts';
import { markOn } from '../ratio/stamp.ts';
import { armOfRow, claimOfRow } from './claim-of-row.ts';
import type { SheetOddDetail } from './detail.ts';
import type { LiftLot, SheetRow } from './rows.ts';

/** Fewer than this are nothing to be set against. */
const FEWEST = 2;

/** What most of these are held to be; nothing where no more than half are held to be one thing. */
function mostHeld(held: readonly (number | undefined)[]): number | undefined {
  const known = held.flatMap((each) => each ?? []);
  const most = known.find((one) => 2 * known.filter((each) => sameRatio(each, one)).length > held.length);
  return most;
}

/**
 * An odd valve that reads as the stamp of its own arm has it, while the others are held to be another ratio: it is
 * another arm, and no fault of it. What siblings differ by counts here too.
 *
 * Equation: lift expected = middle of (lift · most / its own) · mark / most + mark · lobe off, where most is what the
 * others are held to be
 * Source: lift at the valve = ratio · lobe lift, at zero lash.
 */
export function asMarked(
  evidence: Evidence,
  { odd, spring }: { readonly odd: OddValve; readonly spring: Spring },
  rows: readonly SheetRow[],
  beside: readonly SheetValve[],
): SheetOddDetail['asMarked'] {
  const rowOf = (place: SheetValve | OddValve) => rows.find((row) => placeOf(row) === placeOf(place));
  const held = (place: SheetValve) => claimOfRow(evidence, rowOf(place), spring)?.ratio;
  const mark = markOn(evidence, armOfRow(rowOf(odd), spring));
  const own = beside.find((each) => placeOf(each) === placeOf(odd))?.valveLift;
  const others = beside.filter((each) => placeOf(each) !== placeOf(odd) && each.valveLift !== undefined);
  const most = mostHeld(others.map(held));
  if (mark === undefined || own === undefined || most === undefined || others.length < FEWEST)
    return undefined;
  if (sameRatio(mark, most)) return undefined;
  const middle = medianKnown(others.map((each) => ((each.valveLift ?? 0) * most) / (held(each) ?? most)));
  if (middle === undefined) return undefined;
  const expected = (middle * mark) / most + mark * (odd.lobeOff ?? 0);
  return Math.abs(own - expected) > allowance('odd-beyond') ? undefined : { mark, others: most };
}

/** A lift that its own lobe and the stamp of its arm make: no slip of one reading is left to ask. */
export function readsAsStamped(
  evidence: Evidence,
  { lobe, valve }: SheetRow,
  { armId, figure, spring }: LiftLot,
): boolean {
  const mark = markOn(evidence, armId);
  const over = lobe?.value ?? evidence.card[sideOfValve(valve)].lobeLift;
  if (mark === undefined || over === undefined || over <= 0 || figure.value === undefined) return false;
  const ratio = figure.value / over;
  return spring === 'light' && bandsOf(mark, ratio, ratio).every((band) => band === 'within');
}
