import { defined } from '../../../../shared/defined.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { judgeSide } from '../../valve-sheet/odd-valves.ts';
import type { OddValve, SheetValve } from '../../valve-sheet/types.ts';
import type { AssessedQuestion, Judgement } from '../assessment.ts';
import { placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, Side, Spring, ValvePlace } from '../evidence.ts';
import type { SheetOddDetail, SheetSideDetail, SheetSwapDetail } from './detail.ts';
import { isTooCoarse } from './dial.ts';
import type { ArmLot } from './lots-of-swaps.ts';
import { oddNeeds, oddSaid } from './odd-said.ts';
import { partnerOf } from './partner.ts';
import type { SheetRow } from './rows.ts';

type ToSwap = NonNullable<SheetOddDetail['toSwap']>;

const armNameOf = ({ arms }: Evidence, armId: string | undefined): string | undefined =>
  arms.find(({ id }) => id === armId)?.name;

/** A lobe read with a caliper on a loose cam reads low; it is compared with such alone. */
const byCaliper = (row: SheetRow): boolean => row.lobes.some(({ tool }) => tool === 'caliper');

/** The valve's own lift on a spring: of the sheet, else of a set-up with the arm that sits there. */
function liftOf(row: SheetRow, spring: Spring, lots: readonly ArmLot[]): number | undefined {
  const own = row.lifts.find((lot) => lot.spring === spring);
  if (own !== undefined) return isTooCoarse(own.readings) ? undefined : own.figure.value;
  const elsewhere = lots.filter(
    (lot) =>
      lot.spring === spring &&
      lot.method.endsWith('|out') &&
      placeOf(lot) === placeOf(row) &&
      (row.armId === undefined || lot.armId === row.armId),
  );
  return elsewhere.length === 1 ? elsewhere[0]?.value : undefined;
}

/** How often it was read with the arm that sits there: a slip is ruled out before a part is moved. */
function passesOf(
  row: SheetRow | undefined,
  spring: Spring,
  lots: readonly ArmLot[],
): SheetOddDetail['passes'] {
  if (row === undefined) return { lift: 0, lobe: 0 };
  const own = lots.filter(
    (lot) =>
      lot.spring === spring &&
      placeOf(lot) === placeOf(row) &&
      (lot.armId === undefined || row.armId === undefined || lot.armId === row.armId),
  );
  return { lift: own.reduce((sum, { passes }) => sum + passes, 0), lobe: row.lobes.length };
}

/** What of a row may be set against its siblings. */
function asSibling(
  row: SheetRow,
  spring: Spring,
  { calipers, lots, inDoubt }: { calipers: boolean; lots: readonly ArmLot[]; inDoubt: boolean },
): SheetValve {
  const place = { cylinder: row.cylinder, valve: row.valve };
  if (inDoubt) return place;
  const lobeLift = byCaliper(row) === calipers && !isTooCoarse(row.lobes) ? row.lobe?.value : undefined;
  return { ...place, ...defined({ lobeLift, valveLift: liftOf(row, spring, lots) }) };
}

/** The swap that would decide part against position. */
function swapToDo(
  odd: OddValve,
  siblings: readonly SheetValve[],
  odds: readonly OddValve[],
  evidence: Evidence,
): SheetOddDetail['toSwap'] {
  if (odd.cause !== 'rocker-or-position' && odd.cause !== 'both') return undefined;
  const fit = siblings.filter(
    (each) => each.valveLift !== undefined && !odds.some((one) => placeOf(one) === placeOf(each)),
  );
  const cylinders = Math.max(evidence.engine.cylinders ?? 0, ...siblings.map(({ cylinder }) => cylinder));
  const partner = partnerOf(evidence, odd, fit, cylinders);
  if (partner === undefined) return undefined;
  const armOn = (place: ValvePlace) =>
    armNameOf(evidence, evidence.seats.find((seat) => placeOf(seat) === placeOf(place))?.armId);
  return { partner, ...defined({ arm: armOn(odd), partnersArm: armOn(partner) }) };
}

/** The same as a sentence's part: what is done, or what has to be known before it. */
function swapSaid(odd: OddValve, { partner, arm, partnersArm }: ToSwap): string {
  const bank = partner.sameBank === true ? ', on the same bank' : '';
  if (arm === undefined || partnersArm === undefined)
    return `the arms of ${placeOf(odd)} and ${placeOf(partner)}${bank === '' ? '' : ' on the same bank'} named, with which sits where; then both read, and read once more with the two swapped`;
  return `${arm} (${placeOf(odd)}) and ${partnersArm} (${placeOf(partner)}${bank}) swapped, where they sit then said, and both valves read once more in the same way`;
}

/** What the swaps on record tell of an odd valve: the arm on it, the valve itself, or neither yet. */
function causeBy(odd: OddValve, armId: string | undefined, swaps: readonly SheetSwapDetail[]) {
  const place = placeOf(odd);
  const told = swaps.filter((swap) => swap.places.includes(place) || swap.arms.some((arm) => arm === armId));
  if (odd.cause === 'lobe' || odd.cause === 'both') return { cause: odd.cause, touched: told.length > 0 };
  const part = told.find(({ verdict, oddArm }) => verdict === 'part' && oddArm === armId);
  if (part !== undefined && armId !== undefined) return { cause: 'part', touched: true } as const;
  const position = told.find(({ verdict, oddPlace }) => verdict === 'position' && oddPlace === place);
  if (position !== undefined) return { cause: 'position', touched: true } as const;
  return { cause: odd.cause, touched: told.length > 0 };
}

const oddId = (odd: OddValve, spring: Spring): string => `odd:${spring}:${odd.cylinder}-${odd.valve}`;

interface Beside {
  /** Rows with an open doubt. */
  readonly doubtful: ReadonlySet<string>;
  readonly swaps: readonly SheetSwapDetail[];
  readonly lots: readonly ArmLot[];
}

/** The valves of one side as read on one spring, set against each other; rows in doubt stay out of it. */
export function sideOf(
  evidence: Evidence,
  rows: readonly SheetRow[],
  of: { readonly side: Side; readonly spring: Spring },
  { doubtful, swaps, lots }: Beside,
): SheetSideDetail {
  const own = rows.filter(({ valve }) => sideOfValve(valve) === of.side);
  const lobes = own.filter(({ lobe }) => lobe !== undefined);
  const calipers = lobes.length > 0 && lobes.every(byCaliper);
  const siblings = own.map((row) =>
    asSibling(row, of.spring, { calipers, lots, inDoubt: doubtful.has(placeOf(row)) }),
  );
  const judged = judgeSide(of.side, siblings);
  const odd = judged.odd.map((each): SheetOddDetail => {
    const row = own.find((one) => placeOf(one) === placeOf(each));
    const armId = row?.armId;
    const { cause, touched } = causeBy(each, armId, swaps);
    const toSwap = touched ? undefined : swapToDo(each, siblings, judged.odd, evidence);
    return {
      ...each,
      cause,
      passes: passesOf(row, of.spring, lots),
      judgementId: oddId(each, of.spring),
      ...defined({ armName: armNameOf(evidence, armId), toSwap }),
      ...(toSwap === undefined ? {} : { swap: swapSaid(each, toSwap) }),
    };
  });
  return { ...judged, spring: of.spring, odd };
}

/** What is told of each odd valve; the swap is what it still lacks. */
export const oddJudgements = (
  { odd, spring }: SheetSideDetail,
  restsOn: (place: ValvePlace) => readonly string[],
): Judgement[] =>
  odd.map((each) => ({
    id: each.judgementId,
    about: valveSubject(each),
    against: { to: 'siblings' },
    word: 'odd',
    sentence: `${placeOf(each)} is the odd one${spring === 'not-said' ? '' : ` on the ${spring} spring`}. ${oddSaid(each)}`,
    lacks: [...oddNeeds(each), ...(each.swap === undefined ? [] : [each.swap])],
    restsOn: restsOn(each),
  }));

/** A row in doubt is not set against its siblings: the question comes first. */
export function doubtJudgement(place: ValvePlace, question: AssessedQuestion): Judgement {
  return {
    id: `odd:in-doubt:${place.cylinder}-${place.valve}`,
    about: valveSubject(place),
    against: { to: 'siblings' },
    sentence: `${placeOf(place)} is not set against its siblings yet. ${question.answered?.found ? `It was so: ${question.ask} Enter it again.` : `First: ${question.ask}`}`,
    lacks: ['the answer to it'],
    restsOn: question.restsOn,
  };
}
