import { z } from 'zod';
import { defined } from '../../../shared/defined.ts';
import { choice } from '../../../shared/schemas/fields.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { lengths } from '../../../shared/schemas/quantity-lists.ts';
import { evenIfFaulty, oneOfTwoForms, twoFormsJsonSchema } from '../../../shared/schemas/two-forms.ts';

const errorLimit = length('how far off the reading can be on the engine, half-width', {
  sign: 'not-negative',
});
const graduation = length('smallest division of the dial');
const passes = lengths('the peak of each pass, in order');
const usualScatter = length(
  'scatter that single passes of such a set-up usually have, as a standard deviation; pooled with what these show',
  { sign: 'not-negative' },
);

export const valveLift = z
  .strictObject({ readings: passes, graduation, errorLimit, usualScatter: usualScatter.optional() })
  .meta({ description: 'peaks read at the valve' });

export type ReadLift = z.output<typeof valveLift>;

const AS_PASSES = ['readings', 'graduation'] as const;
const AS_ONE = ['value', 'source'] as const;

export const lobeLift = z
  .strictObject({
    readings: passes.optional(),
    graduation: graduation.optional(),
    value: length('lobe lift from a card or a single reading').optional(),
    source: choice(['card', 'caliper', 'indicator'], 'where the value comes from').optional(),
    errorLimit,
    usualScatter: usualScatter.optional(),
  })
  .superRefine(oneOfTwoForms(AS_PASSES, AS_ONE), evenIfFaulty)
  .meta({
    description: 'lobe lift: passes at the lifter with the dial’s graduation, or one value with its source',
    ...twoFormsJsonSchema(AS_PASSES, AS_ONE),
  });

export interface OneLift {
  readonly value: number;
  readonly source: 'card' | 'caliper' | 'indicator';
  readonly errorLimit: number;
}

/** The form in which the lobe lift came. */
export function lobeForm(lobe: z.output<typeof lobeLift>): ReadLift | OneLift {
  const { readings, graduation: division, value, source, errorLimit: limit, usualScatter: usual } = lobe;
  if (readings !== undefined && division !== undefined) {
    return { readings, graduation: division, errorLimit: limit, ...defined({ usualScatter: usual }) };
  }
  if (value !== undefined && source !== undefined) return { value, source, errorLimit: limit };
  throw new RangeError('a lobe lift in neither form');
}

/** Whether an indicator read it: a card or a caliper shares no error with the indicator at the valve. */
export const byIndicator = (lobe: ReadLift | OneLift): boolean =>
  'readings' in lobe || lobe.source === 'indicator';
