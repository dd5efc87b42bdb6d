import { CAUSES, type CauseName, LOCKING, WEAR } from '../../noise/causes.ts';
import type { Candidate } from '../../noise/weigh.ts';
import { listed } from '../common/said.ts';
import type { NoiseDetail } from './detail.ts';

/** So many are named; of more it is said how many there are. */
const MOST_NAMED = 5;

/** Causes that go by one name while nothing tells them apart. */
const GROUPS: readonly { readonly said: string; readonly causes: readonly CauseName[] }[] = [
  { said: 'the locking', causes: LOCKING },
  { said: 'wear on that valve', causes: WEAR },
];

interface Named {
  readonly said: string;
  readonly facts: number;
}

/** All of the group remain, and as much speaks for each. */
function together(left: readonly Candidate[], causes: readonly CauseName[]): Candidate[] {
  const own = left.filter(({ cause }) => causes.includes(cause));
  const alike = own.every((each) => each.for.length === own[0]?.for.length);
  return own.length === causes.length && alike ? own : [];
}

/** Those that remain by name, most for them first. */
function namesOf(left: readonly Candidate[]): Named[] {
  const groups = GROUPS.map(({ said, causes }) => ({ said, own: together(left, causes) }));
  const grouped = new Set(groups.flatMap(({ own }) => own.map(({ cause }) => cause)));
  return left.flatMap(({ cause, for: speaksFor }): Named[] => {
    if (!grouped.has(cause))
      return [{ said: `${CAUSES[cause].said} (${speaksFor.length} for)`, facts: speaksFor.length }];
    const group = groups.find(({ own }) => own[0]?.cause === cause);
    return group === undefined
      ? []
      : [
          {
            said: `${group.said} (${group.own.length} causes, ${speaksFor.length} for each)`,
            facts: speaksFor.length,
          },
        ];
  });
}

/** What remains after all that is known, in one line; it names what would part the first two, and rules on nothing. */
export function noiseSaid(
  left: readonly Candidate[],
  facts: number,
  nearest: NoiseDetail['nearest'],
): string {
  const by = facts === 1 ? 'the one fact' : `the ${facts} facts`;
  const against = left[0]?.against.length ?? 0;
  const speaks = against === 0 ? 'nothing speaks against' : `least speaks against, ${against} each,`;
  const names = namesOf(left);
  const few = names.length <= MOST_NAMED ? names : names.filter((each) => each.facts === names[0]?.facts);
  const rest = names.length - few.length;
  const named =
    few.length > MOST_NAMED
      ? `${left.length} of the causes`
      : `${listed(few.map(({ said }) => said))}${rest === 0 ? '' : `, nor against ${rest} with less for them`}`;
  const told =
    nearest === undefined
      ? ''
      : ` Between ${nearest.causes[0]} and ${nearest.causes[1]} this would tell: ${nearest.check.thing}.`;
  return `No verdict. By ${by} on record ${speaks} ${named}.${told}`;
}
