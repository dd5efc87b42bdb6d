import type { Judgement } from '../assessment.ts';
import { firstSaid } from '../common/first-said.ts';
import { lowOrHigh, placeOf, valveSubject } from '../common/said.ts';
import type { ValvePlace } from '../evidence.ts';
import type { SheetSideDetail } from './detail.ts';

/** How ids of these judgements begin. */
export const LOBE_UNLIKE = 'lobe-unlike:';

/** What tells it from a slip; no part has to move for that. */
const LACKS = ['another reading of that lobe at the lifter'];

/** The lobes of a side that do not go with their valves, but those that are told as worn. */
export const lobesUnlikeOf = ({ lobesUnlike, lobesDown }: SheetSideDetail) =>
  lobesUnlike.filter((each) => !lobesDown.some((down) => placeOf(down) === placeOf(each)));

/** A lobe that lies off its side under a valve that does not: no ratio of that row is what it looks like. */
export const lobesUnlikeTold = (
  side: SheetSideDetail,
  restsOn: (place: ValvePlace) => readonly string[],
): Judgement[] =>
  lobesUnlikeOf(side).map((each) => ({
    id: `${LOBE_UNLIKE}${side.spring}:${each.cylinder}-${each.valve}`,
    about: valveSubject(each),
    against: { to: 'siblings' },
    sentence: `The lobe of ${placeOf(each)} reads ${lowOrHigh(each.off)}, and its valve lifts like the others: the lobe may be misread. ${firstSaid(LACKS)}`,
    lacks: LACKS,
    restsOn: restsOn(each),
  }));
