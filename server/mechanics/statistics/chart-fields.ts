import { z } from 'zod';
import { type InputFault, InputFaults } from '../../../shared/problems/faults.ts';
import { bareList, choice, listOf } from '../../../shared/schemas/fields.ts';
import { came, evenIfFaulty, faultAt } from '../../../shared/schemas/two-forms.ts';
import { LARGEST_SUBGROUP, SMALLEST_SUBGROUP } from './control-constants.ts';

const beyond = 1e12;

const chart = choice(['xbar-r', 'individuals'], 'means and ranges of subgroups, or single values');

/** The list that each chart is drawn from. */
const LIST_OF = { 'xbar-r': 'subgroups', individuals: 'individuals' } as const;

export const chartInput = z
  .strictObject({
    subgroups: listOf(
      bareList('values of one subgroup', { fewest: SMALLEST_SUBGROUP, longest: LARGEST_SUBGROUP, beyond }),
      'subgroups of one size in the order they came, two at the least',
      2,
    ).optional(),
    individuals: bareList('single values in the order they came, two at the least', {
      fewest: 2,
      beyond,
    }).optional(),
    chart,
  })
  .superRefine(({ chart: kind }, ctx) => {
    const wanted = LIST_OF[kind];
    if (wanted === undefined) return;
    const other = wanted === 'subgroups' ? 'individuals' : 'subgroups';
    if (!came(ctx, wanted))
      faultAt(ctx, [wanted], 'required', `is missing: the ${kind} chart is drawn from it`);
    if (came(ctx, other)) faultAt(ctx, [other], 'not-allowed', `does not go with the ${kind} chart`);
  }, evenIfFaulty);

/**
 * Holds subgroups to one size.
 *
 * @throws not-allowed when a subgroup has another size than the first
 */
export function refuseUnequal(subgroups: readonly (readonly number[])[]): void {
  const size = subgroups[0]?.length ?? 0;
  const faults = subgroups.flatMap((each, index): InputFault[] => {
    if (each.length === size) return [];
    const detail = `has ${each.length} values where the first subgroup has ${size}`;
    return [{ pointer: `/subgroups/${index}`, code: 'not-allowed', detail }];
  });
  if (faults.length > 0) throw new InputFaults(faults.slice(0, 100));
}
