import { planOf } from '../../../../../shared/schemas/goals.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { byText } from '../../../kit/by-text.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { listed, nominalSaid, placeOf } from '../../common/said.ts';
import { sameRatio } from '../../common/same-ratio.ts';
import type { Evidence, SheetEvidence, ValvePlace } from '../../evidence.ts';
import { isAnsweredAlone, type Stamp, stampOf, stampQuestion } from './stamp.ts';

interface Marked {
  readonly armId: string;
  readonly stamp: Stamp;
  /** What was read with it on the sheet. */
  readonly restsOn: readonly string[];
}

/** A change is worked out for a valve once its lobe lift or one of its gaps is known. */
const isWorkedOut = ({ call, card, sheet }: Evidence, place: ValvePlace): boolean =>
  planOf(call.goal).isChange === true &&
  (card[sideOfValve(place.valve)].lobeLift !== undefined ||
    sheet.some((entry) => entry.standing && placeOf(entry) === placeOf(place)));

/** Read with the arm that sits there now, wherever it sat; where none was named, at the valve that it sits on. */
const isReadWith = (entry: SheetEvidence, seat: ValvePlace & { readonly armId: string }): boolean =>
  entry.armId === undefined
    ? entry.comesOff !== true && placeOf(entry) === placeOf(seat)
    : entry.armId === seat.armId;

/** Arms on the engine whose mark has no point, where something is held to what they are: a lift of the sheet, or a change. */
function markedOf(evidence: Evidence, asked: ReadonlySet<string>): Marked[] {
  const { soldAs } = evidence.rockers;
  return evidence.seats.flatMap((seat): Marked[] => {
    const { armId } = seat;
    const stamp = stampOf(evidence, armId);
    if (stamp === undefined || stamp.dotted || asked.has(armId)) return [];
    if (soldAs !== undefined && sameRatio(soldAs, stamp.ratio)) return [];
    const restsOn = evidence.sheet
      .filter(
        (entry) =>
          entry.standing && entry.arms === 'these' && entry.kind === 'valve-lift' && isReadWith(entry, seat),
      )
      .map(({ id }) => id);
    return restsOn.length > 0 || isWorkedOut(evidence, seat) ? [{ armId, stamp, restsOn }] : [];
  });
}

/**
 * Whether a mark without its point is the ratio, of arms that were read in no set-up: asked before a side of the sheet or
 * what a change does is held to something else, once for all that carry it.
 */
export function stampsUnasked(evidence: Evidence, asked: ReadonlySet<string>): AssessedQuestion[] {
  const marked = markedOf(evidence, asked);
  const texts = [...new Set(marked.map(({ stamp }) => stamp.text))].sort();
  return texts
    .flatMap((text) =>
      together(
        evidence,
        marked.filter(({ stamp }) => stamp.text === text).toSorted((a, b) => byText(a.armId, b.armId)),
      ),
    )
    .flatMap((own) => askedOf(evidence, own));
}

/** Arms of one mark that are asked about at once; one that was answered alone stays alone. */
function together(evidence: Evidence, own: readonly Marked[]): (readonly Marked[])[] {
  const isAlone = ({ armId, stamp }: Marked) => isAnsweredAlone(evidence, armId, stamp);
  return [...own.filter(isAlone).map((each) => [each]), own.filter((each) => !isAlone(each))];
}

function askedOf(evidence: Evidence, own: readonly Marked[]): AssessedQuestion[] {
  const [first, ...others] = own;
  if (first === undefined) return [];
  const restsOn = own.flatMap((each) => each.restsOn).sort();
  const { soldAs } = evidence.rockers;
  const put = (weight: AssessedQuestion['weight']) =>
    stampQuestion(evidence, [first.armId, ...others.map(({ armId }) => armId)], first.stamp, {
      weight,
      size: listed([
        `As the ratio they are held to ${nominalSaid(first.stamp.ratio)}`,
        ...(soldAs === undefined ? [] : [`else to the ${nominalSaid(soldAs)} they are sold as`]),
      ]).concat('.'),
      restsOn,
      step: restsOn.length > 0 ? 'sheet' : 'parts',
    });
  const question = put('strong');
  return [question.answered === undefined ? question : put('weak')];
}
