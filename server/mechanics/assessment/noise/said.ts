import { CAUSES } from '../../noise/causes.ts';
import type { Candidate } from '../../noise/weigh.ts';
import { listed } from '../common/said.ts';
import type { NoiseDetail } from './detail.ts';

/** So many are named; of more it is said how many there are. */
const MOST_NAMED = 4;

const counted = ({ cause, for: speaksFor }: Candidate): string =>
  `${CAUSES[cause].said} (${speaksFor.length} for)`;

const counts = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** What remains after all that is known, in one line; it names what would part the first two, and rules on nothing. */
export function noiseSaid(
  left: readonly Candidate[],
  facts: number,
  nearest: NoiseDetail['nearest'],
): string {
  const [first] = left;
  const against = first?.against.length ?? 0;
  const leastSaid = against === 0 ? 'nothing against them' : `least against them, ${against} each`;
  const named = listed(left.slice(0, MOST_NAMED).map(counted));
  const more = left.length > MOST_NAMED ? `, and ${left.length - MOST_NAMED} more` : '';
  const which =
    left.length === 1
      ? `one cause has ${against === 0 ? 'nothing' : `least, ${against},`} against it: ${named}`
      : `${left.length} causes have ${leastSaid}: ${named}${more}`;
  const parted =
    nearest === undefined
      ? ''
      : ` Between ${nearest.causes[0]} and ${nearest.causes[1]} it is ${nearest.check.thing} that tells.`;
  return `By ${counts(facts, 'fact', 'facts')}, and no verdict: ${which}.${parted}`;
}
