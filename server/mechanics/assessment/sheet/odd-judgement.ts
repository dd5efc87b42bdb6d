import type { AssessedQuestion, Judgement } from '../assessment.ts';
import { placeOf, valveSubject } from '../common/said.ts';
import type { ValvePlace } from '../evidence.ts';
import type { SheetSideDetail } from './detail.ts';
import { oddNeeds, oddSaid } from './odd-said.ts';

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
