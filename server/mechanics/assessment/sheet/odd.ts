import { defined } from '../../../../shared/defined.ts';
import { judgeSide } from '../../valve-sheet/odd-valves.ts';
import type { OddValve, SheetValve } from '../../valve-sheet/types.ts';
import type { AssessedQuestion, Judgement } from '../assessment.ts';
import { placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, Side, Spring, ValvePlace } from '../evidence.ts';
import type { SheetOddDetail, SheetSideDetail, SheetSwapDetail } from './detail.ts';
import { oddNeeds, oddSaid } from './odd-said.ts';
import type { SheetRow } from './rows.ts';

const armNameOf = ({ arms }: Evidence, armId: string | undefined): string | undefined =>
  arms.find(({ id }) => id === armId)?.name;

/** A lobe read with a caliper on a loose cam reads low; it is compared with such alone. */
const byCaliper = (row: SheetRow): boolean => row.lobes.some(({ tool }) => tool === 'caliper');

/** What of a row may be set against its siblings. */
function asSibling(row: SheetRow, spring: Spring, calipers: boolean, inDoubt: boolean): SheetValve {
  const place = { cylinder: row.cylinder, valve: row.valve };
  if (inDoubt) return place;
  const lobeLift = byCaliper(row) === calipers ? row.lobe?.value : undefined;
  const valveLift = row.lifts.find((lot) => lot.spring === spring)?.figure.value;
  return {
    ...place,
    ...defined({ lobeLift, valveLift }),
  };
}

/** The swap that would decide part against position, with the nearest valve that is not odd itself. */
function swapToDo(
  odd: OddValve,
  siblings: readonly SheetValve[],
  odds: readonly OddValve[],
  done: readonly SheetSwapDetail[],
  evidence: Evidence,
): string | undefined {
  if (odd.cause !== 'rocker-or-position' && odd.cause !== 'both') return undefined;
  if (done.some(({ places }) => places.includes(placeOf(odd)))) return undefined;
  const fit = siblings.filter(
    ({ cylinder, valveLift }) => valveLift !== undefined && !odds.some((each) => each.cylinder === cylinder),
  );
  const [near] = fit.toSorted(
    (a, b) =>
      Math.abs(a.cylinder - odd.cylinder) - Math.abs(b.cylinder - odd.cylinder) || a.cylinder - b.cylinder,
  );
  if (near === undefined) return undefined;
  const armOn = (place: ValvePlace) =>
    armNameOf(evidence, evidence.seats.find((seat) => placeOf(seat) === placeOf(place))?.armId);
  const [own, other] = [armOn(odd), armOn(near)];
  if (own === undefined || other === undefined)
    return `the arms of ${placeOf(odd)} and ${placeOf(near)} named, with which sits where; then both read, and read once more with the two swapped`;
  return `${own} (${placeOf(odd)}) and ${other} (${placeOf(near)}) swapped, where they sit then said, and both valves read once more in the same way`;
}

const oddId = (odd: OddValve, spring: Spring): string => `odd:${spring}:${odd.cylinder}-${odd.valve}`;

/** The valves of one side as read on one spring, set against each other; rows in doubt stay out of it. */
export function sideOf(
  evidence: Evidence,
  rows: readonly SheetRow[],
  of: { readonly side: Side; readonly spring: Spring },
  doubtful: ReadonlySet<string>,
  swaps: readonly SheetSwapDetail[],
): SheetSideDetail {
  const own = rows.filter(({ valve }) => valve === of.side);
  const lobes = own.filter(({ lobe }) => lobe !== undefined);
  const calipers = lobes.length > 0 && lobes.every(byCaliper);
  const siblings = own.map((row) => asSibling(row, of.spring, calipers, doubtful.has(placeOf(row))));
  const judged = judgeSide(of.side, siblings);
  const odd = judged.odd.map((each): SheetOddDetail => {
    const swap = swapToDo(each, siblings, judged.odd, swaps, evidence);
    return { ...each, judgementId: oddId(each, of.spring), ...defined({ swap }) };
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
