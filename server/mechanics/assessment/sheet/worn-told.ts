import type { AssessedQuestion, Judgement } from '../assessment.ts';
import { inches, placeOf, valveSubject } from '../common/said.ts';
import type { ValvePlace } from '../evidence.ts';
import type { SheetSideDetail } from './detail.ts';

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

/** The sides without valves that are odd by such a lobe alone: they are told with it. */
export function besidesWorn(sides: readonly SheetSideDetail[], worn: readonly Worn[]): SheetSideDetail[] {
  const found = new Set(foundWorn(worn).map(({ place }) => placeOf(place)));
  return sides.map((side) => ({
    ...side,
    odd: side.odd.filter((each) => each.cause !== 'lobe' || !found.has(placeOf(each))),
  }));
}
