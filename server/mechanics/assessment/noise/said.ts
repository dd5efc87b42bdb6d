import { CAUSES } from '../../noise/causes.ts';
import type { Candidate } from '../../noise/weigh.ts';
import { listed } from '../common/said.ts';
import type { NoiseDetail } from './detail.ts';

/** So many are named; of more it is said how many there are. */
const MOST_NAMED = 8;

const named = ({ cause, for: speaksFor }: Candidate): string =>
  `${CAUSES[cause].said} (${speaksFor.length} for)`;

/** Of those that remain the ones with most for them, if they are few. */
function mostFor(left: readonly Candidate[]): readonly Candidate[] {
  if (left.length <= MOST_NAMED) return left;
  const most = left.filter((each) => each.for.length === left[0]?.for.length);
  return most.length <= MOST_NAMED ? most : [];
}

const againstSaid = (count: number): string =>
  count === 0 ? 'nothing against' : `no more than ${count} against`;

/** What remains after all that is known, in one line; it names what would part the first two, and rules on nothing. */
export function noiseSaid(
  left: readonly Candidate[],
  facts: number,
  nearest: NoiseDetail['nearest'],
): string {
  const against = againstSaid(left[0]?.against.length ?? 0);
  const causes =
    left.length === 1 ? `one cause has ${against} it` : `${left.length} causes have ${against} them`;
  const most = mostFor(left);
  const rest = left.length - most.length;
  const names =
    most.length === 0
      ? ''
      : `: ${listed(most.map(named))}${rest === 0 ? '' : `, and ${rest} with less for them`}`;
  const told =
    nearest === undefined || most.length === 0
      ? ''
      : ` Between ${nearest.causes[0]} and ${nearest.causes[1]} this would tell: ${nearest.check.thing}.`;
  return `No verdict. By ${facts === 1 ? 'the one fact' : `the ${facts} facts`} on record ${causes}${names}.${told}`;
}
