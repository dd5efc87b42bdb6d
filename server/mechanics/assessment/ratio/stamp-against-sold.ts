import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { listed, nominalSaid } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { WITHIN } from './bands.ts';
import type { GroupExplained } from './explain.ts';
import { ratioOnBox } from './held-as.ts';
import { plansOf } from './marks.ts';

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
  const [mark] = claims;
  if (mark?.to !== 'mark') return undefined;
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
            changes: 'Another part was sent than was ordered; what was read of it stays.',
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

/** What that adds to the word against the stamp. */
export function soldOtherwiseSaid(evidence: Evidence, explained: GroupExplained): string {
  const found = soldOtherwise(evidence, explained);
  const [question] = stampAgainstSold(evidence, explained);
  if (found === undefined || question === undefined) return '';
  switch (chosenOf(question)) {
    case 'sold':
      return ` The ${nominalSaid(found.sold)} was ordered: another part was sent.`;
    case 'stamp':
      return ` The ${nominalSaid(found.stamped)} was ordered: put right what they are sold as.`;
    default:
      return ` But ${listed(found.says)}: stamp and order do not go together. Which was ordered?`;
  }
}
