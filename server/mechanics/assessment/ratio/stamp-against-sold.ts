import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { listed, nominalSaid } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { bandsOf, WITHIN } from './bands.ts';
import type { GroupExplained } from './explain.ts';
import { ratioOnBox } from './held-as.ts';
import { lacksOfGroup } from './lacking.ts';
import { type Claim, plansOf } from './marks.ts';
import { ratioReadOf } from './reading.ts';

const CODE = 'stamp-against-sold';

/** Names so near that a reading of the one agrees with the other: 1.5 and 1.52. */
const isOne = (ratio: number, other: number): boolean => Math.abs(other / ratio - 1) <= WITHIN;

/** What says another ratio than the stamp: what it is sold as, its box. */
interface SoldOtherwise {
  readonly stamped: number;
  readonly sold: number;
  readonly says: readonly string[];
}

/** The stamp of an arm beside what was sold; of an arm that is planned what the old ones are sold as says nothing. */
function soldOtherwise(evidence: Evidence, { arm, claims }: GroupExplained): SoldOtherwise | undefined {
  const mark = claims.find(({ to }) => to === 'mark');
  if (mark === undefined) return undefined;
  const { soldAs } = evidence.rockers;
  if (plansOf(evidence).some((plan) => isOne(mark.ratio, plan))) return undefined;
  const box = ratioOnBox(arm?.boxLabel ?? '');
  const isOther = (ratio: number | undefined) => ratio !== undefined && !isOne(mark.ratio, ratio);
  const sold = isOther(soldAs) ? soldAs : isOther(box) ? box : undefined;
  if (sold === undefined) return undefined;
  return {
    stamped: mark.ratio,
    sold,
    says: [
      ...(soldAs !== undefined && isOther(soldAs) ? [`it is sold as ${nominalSaid(soldAs)}`] : []),
      ...(box !== undefined && isOther(box) ? [`its box says ${nominalSaid(box)}`] : []),
    ],
  };
}

/** Stamp and order do not go together: the wrong arm in the box, the wrong set, or an order put down wrongly. */
export function stampAgainstSold(evidence: Evidence, explained: GroupExplained): AssessedQuestion[] {
  const found = soldOtherwise(evidence, explained);
  const { arm, given } = explained;
  if (found === undefined || arm === undefined || given === undefined) return [];
  const { stamped, sold, says } = found;
  const put = (weight: AssessedQuestion['weight']) =>
    asked(
      {
        code: CODE,
        weight,
        ask: `${arm.name} is stamped ${nominalSaid(stamped)}; ${listed(says)}. Which was ordered?`,
        knownBy: 'which ratio was ordered',
        size: 'A wrong arm in the box, a wrong set, or an order that was put down wrongly.',
        test: 'Read the mark on the arm, the box and the order again, each by itself, and look whether all arms of the set carry one stamp.',
        byLooking: true,
        restsOn: given.entryIds,
      },
      {
        about: { of: 'arm', armId: arm.id, name: arm.name },
        step: 'ratio',
        answers: evidence.answers,
        choices: [
          {
            code: 'sold',
            label: `The ${nominalSaid(sold)} was ordered`,
            changes: 'What it reads as tells whether another part was sent or the stamp is the odd one.',
          },
          {
            code: 'stamp',
            label: `The ${nominalSaid(stamped)} was ordered`,
            changes: 'Nothing is against the part: what they are sold as is put right.',
          },
          { code: 'not-known', label: 'Nobody knows', changes: 'It stays open, and is said.' },
        ],
      },
    );
  // Answered, nobody waits for it.
  const question = put('strong');
  return [question.answered === undefined ? question : put('weak')];
}

/** The reading is level with what was ordered and off the stamp, with nothing lacking: then the stamp is the odd one. */
function isAsOrdered(explained: GroupExplained, { stamped, sold }: SoldOtherwise): boolean {
  const read = ratioReadOf(explained);
  if (read === undefined || lacksOfGroup(explained).length > 0 || explained.throughLift) return false;
  const bandsTo = (ratio: number) => bandsOf(ratio, read.low, read.high);
  return bandsTo(sold).every((band) => band === 'within') && !bandsTo(stamped).includes('within');
}

/** What was ordered, where somebody said that it is not what is stamped on the arm, and the arm reads as that. */
export function readsAsOrdered(evidence: Evidence, explained: GroupExplained): Claim | undefined {
  const found = soldOtherwise(evidence, explained);
  const [question] = stampAgainstSold(evidence, explained);
  if (found === undefined || question === undefined || chosenOf(question) !== 'sold') return undefined;
  return isAsOrdered(explained, found)
    ? explained.claims.find(({ to, ratio }) => to === 'sold-as' && ratio === found.sold)
    : undefined;
}

/** Another part was sent, unless it reads as what was ordered; a reading between the two leaves it to the stamp. */
function sentSaid(explained: GroupExplained, found: SoldOtherwise): string {
  const [sold, stamped] = [nominalSaid(found.sold), nominalSaid(found.stamped)];
  if (isAsOrdered(explained, found))
    return ` The ${sold} was ordered, and it reads as that: the ${stamped} stamped on it is the odd one.`;
  const read = ratioReadOf(explained);
  const isStamped =
    read !== undefined && bandsOf(found.stamped, read.low, read.high).every((band) => band === 'within');
  return ` The ${sold} was ordered: ${isStamped ? '' : 'by its stamp '}another part was sent.`;
}

/** The ratio that was ordered, where somebody said so and they are still put down as sold as another. */
export function soldToPutRight(evidence: Evidence, explained: GroupExplained): number | undefined {
  const found = soldOtherwise(evidence, explained);
  const [question] = stampAgainstSold(evidence, explained);
  const { soldAs } = evidence.rockers;
  if (found === undefined || question === undefined || chosenOf(question) !== 'stamp') return undefined;
  return soldAs === undefined || isOne(found.stamped, soldAs) ? undefined : found.stamped;
}

/** What that adds to the word against the stamp; `isTold`: that it is level with what it is sold as was told already. */
export function soldOtherwiseSaid(evidence: Evidence, explained: GroupExplained, isTold: boolean): string {
  const found = soldOtherwise(evidence, explained);
  const [question] = stampAgainstSold(evidence, explained);
  if (found === undefined || question === undefined) return '';
  switch (chosenOf(question)) {
    case 'sold':
      return sentSaid(explained, found);
    case 'stamp':
      return ` The ${nominalSaid(found.stamped)} was ordered: put right what they are sold as.`;
    default:
      // What it is sold as was told with the ratio: it is not told twice in a row.
      if (isTold) return ' Stamp and order do not go together: which was ordered?';
      return ` But ${listed(found.says)}: stamp and order do not go together. Which was ordered?`;
  }
}
