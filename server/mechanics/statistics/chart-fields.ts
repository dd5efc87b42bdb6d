import { z } from 'zod';
import { choice, listOf } from '../../../shared/schemas/fields.ts';
import { bareList } from '../../../shared/schemas/number-fields.ts';
import { came, evenIfFaulty, faultAt } from '../../../shared/schemas/two-forms.ts';
import { LARGEST_SUBGROUP, SMALLEST_SUBGROUP } from './control-constants.ts';

const beyond = 1e12;

const chart = choice(['xbar-r', 'individuals'], 'means and ranges of subgroups, or single values');

/** The list that each chart is drawn from. */
const LIST_OF = { 'xbar-r': 'subgroups', individuals: 'individuals' } as const;

/** Indices of the subgroups of another size than the first; one that is faulty itself has no size. */
function unequalTo(lists: unknown): number[] {
  if (!Array.isArray(lists)) return [];
  const sizes = lists.map((each: unknown) => (Array.isArray(each) ? each.length : undefined));
  const first = sizes.find((size) => size !== undefined);
  return [...sizes.keys()].filter((index) => sizes[index] !== undefined && sizes[index] !== first);
}

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
  .superRefine(({ chart: kind, subgroups }, ctx) => {
    for (const index of unequalTo(subgroups).slice(0, 100)) {
      faultAt(
        ctx,
        ['subgroups', String(index)],
        'not-allowed',
        'has another number of values than the first',
      );
    }
    // A faulty word is told by itself; it may even be the name of something every object has.
    if (!Object.hasOwn(LIST_OF, kind)) return;
    const wanted = LIST_OF[kind];
    const other = wanted === 'subgroups' ? 'individuals' : 'subgroups';
    if (!came(ctx, wanted))
      faultAt(ctx, [wanted], 'required', `is missing: the ${kind} chart is drawn from it`);
    if (came(ctx, other)) faultAt(ctx, [other], 'not-allowed', `does not go with the ${kind} chart`);
  }, evenIfFaulty)
  .meta({
    oneOf: [
      { properties: { chart: { const: 'xbar-r' } }, required: ['subgroups'] },
      { properties: { chart: { const: 'individuals' } }, required: ['individuals'] },
    ],
  });
