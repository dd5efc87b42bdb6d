import type { AssessedQuestion, Judgement } from '../../assessment.ts';
import { inches, lowOrHigh, placeOf, valveSubject } from '../../common/said.ts';
import type { ValvePlace } from '../../evidence.ts';
import type { SheetOddDetail, SheetSideDetail } from '../rows/detail.ts';

interface Worn {
  readonly place: ValvePlace;
  /** How far it is down on the others [m]. */
  readonly by: number;
  readonly question: AssessedQuestion;
}

/** A lobe that was looked at and is worn: that is the answer, and nothing is turned to read it again. */
export const foundWorn = <Each extends Worn>(worn: readonly Each[]): Each[] =>
  worn.filter(({ question }) => question.answered?.found === true);

/** Lobes that were found worn, each as the answer that it is. */
export const wornTold = (worn: readonly Worn[]): Judgement[] =>
  foundWorn(worn).map(({ place, by, question }) => ({
    id: `lobe-worn:${place.cylinder}-${place.valve}`,
    about: valveSubject(place),
    against: { to: 'siblings' },
    sentence: `The lobe of ${placeOf(place)} was looked at, and is worn: it is ${inches(by)} down on the others. It is the cam and its lifter, not the rocker.`,
    lacks: [],
    restsOn: question.restsOn,
  }));

/** A lobe that was read short accounts for nothing that its valve does: what does is open till it is read again. */
const readShort = (odd: SheetOddDetail): SheetOddDetail => ({
  ...odd,
  words:
    odd.valveOff === undefined
      ? 'Its lobe was read short, as was answered. First: the lobe read again.'
      : `Valve lift ${lowOrHigh(odd.valveOff)}. Its lobe was read short, as was answered, so that the lobe does not account for it. First: the lobe read again, then the valve.`,
});

/**
 * The sides without valves that are odd by such a lobe alone: they are told with it. What was answered to be read short
 * is no reason for anything.
 */
export function besidesWorn(sides: readonly SheetSideDetail[], worn: readonly Worn[]): SheetSideDetail[] {
  const found = new Set(foundWorn(worn).map(({ place }) => placeOf(place)));
  const short = new Set(
    worn.filter(({ question }) => question.answered?.found === false).map(({ place }) => placeOf(place)),
  );
  return sides.map((side) => ({
    ...side,
    odd: side.odd
      .filter((each) => each.cause !== 'lobe' || !found.has(placeOf(each)))
      .map((each) => (each.cause === 'lobe' && short.has(placeOf(each)) ? readShort(each) : each)),
  }));
}
