import { planOf } from '../../../../shared/schemas/goals.ts';
import { nominalSaid } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { isHeldToBe, isSoldAsUnknown } from '../ratio/claims/sold-as.ts';
import type { GroupExplained } from '../ratio/compared/explain.ts';
import { soldToPutRight } from '../ratio/compared/stamp-against-sold.ts';
import { MUST, type Need, need } from './need.ts';

/** What the rockers are held to be, where nobody has said yet that nobody knows. */
export function ofSoldAs(evidence: Evidence): Need {
  // Of a change two sets are spoken of.
  const which = planOf(evidence.call.goal).isChange ? 'the rockers that are on now' : 'the rockers';
  return need(
    'sold-as',
    `the ratio ${which} are sold as`,
    `Ask which ratio ${which} are sold as, or keep that nobody knows.`,
    // A mark on the arm is what it is held to be as well.
    isHeldToBe(evidence) || isSoldAsUnknown(evidence),
    {
      ...MUST,
      at: { field: 'rockers.nominalRatio' },
      askAtBench: `Say which ratio ${which} are sold as, or that nobody knows.`,
    },
  );
}

/** Somebody said what was ordered, and the build has them sold as something else. */
export function ofSoldRight(evidence: Evidence, explained: readonly GroupExplained[]): Need[] {
  const [ordered] = explained.flatMap((each) => soldToPutRight(evidence, each) ?? []);
  if (ordered === undefined) return [];
  const name = nominalSaid(ordered);
  return [
    need(
      'sold-as-right',
      `what they are sold as put right: the ${name} was ordered`,
      `Put right what they are sold as: the ${name} was ordered.`,
      false,
      { ...MUST, at: { field: 'rockers.nominalRatio' } },
    ),
  ];
}
