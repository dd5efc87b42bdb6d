import { z } from 'zod';
import { defined } from '../../../shared/defined.ts';
import { impossible } from '../../../shared/problems/faults.ts';
import { bare, bareList } from '../../../shared/schemas/number-fields.ts';
import { outNumber } from '../../../shared/schemas/outputs.ts';
import {
  came,
  evenIfFaulty,
  faultAt,
  oneOfTwoForms,
  twoFormsJsonSchema,
} from '../../../shared/schemas/two-forms.ts';
import { defineComputation } from '../kit/computation.ts';
import { everyFault } from '../kit/every-fault.ts';
import { capabilityOf, type Process } from '../statistics/process-capability.ts';
import { sampleOf } from '../uncertainty/sample.ts';

const beyond = 1e12;
/** Fewer values than this leave the interval rough (NIST/SEMATECH e-Handbook, 6.1.6). */
const ENOUGH = 25;

const twoForms = oneOfTwoForms(['values'], ['mean', 's']);

const input = z
  .strictObject({
    values: bareList('the values, two at the least', { fewest: 2, beyond }).optional(),
    mean: bare('mean, where the values are not at hand', { beyond }).optional(),
    s: bare('standard deviation, with the mean', { above: 0, beyond }).optional(),
    n: bare('how many values mean and s come from', { least: 2, whole: true, beyond }).optional(),
    lower: bare('lower limit', { beyond }),
    upper: bare('upper limit, above the lower', { beyond }),
  })
  .superRefine((value, ctx) => {
    twoForms(value, ctx);
    if (came(ctx, 'values') && came(ctx, 'n')) {
      faultAt(ctx, ['n'], 'not-allowed', 'goes with mean and s alone: values are counted');
    }
  }, evenIfFaulty)
  .meta(twoFormsJsonSchema(['values'], ['mean', 's']));

const output = z.object({
  cp: outNumber('width of the limits over six standard deviations'),
  cpk: outNumber('distance to the nearer limit over three standard deviations'),
  interval95: z
    .tuple([z.number(), z.number()])
    .meta({ description: '95 % interval of cpk, low and high; with values or n' })
    .optional(),
});

type Input = z.output<typeof input>;

function processOf({ values, mean = 0, s = 0, n }: Input): Process {
  if (values === undefined) return { mean, s, ...defined({ n }) };
  const sample = sampleOf(values);
  if (!sample.s) impossible(['values'], 'are all alike: without scatter there is no capability');
  return { mean: sample.mean, s: sample.s, n: sample.n };
}

/**
 * How a lot's spread sits between two limits.
 *
 * Equation: cp = (U − L)/6s; cpk = min(U − x̄, x̄ − L)/3s; cpk ± 1.96 √(1/(9n) + cpk²/(2(n − 1)))
 *
 * @param values [1] two or more, all in one unit; or mean and s instead
 * @param mean [1] mean, in the same unit as the limits
 * @param s [1] standard deviation with n − 1, above zero
 * @param n [1] how many values mean and s come from, two or more; left out, no interval
 * @param lower [1] lower limit L
 * @param upper [1] upper limit U, above the lower
 * @returns cp, cpk, interval95 [1] of cpk
 * @throws impossible-input when the upper limit is not above the lower
 * @throws impossible-input when the values are all alike
 *
 * Validity: near normal values that hold still; the interval is approximate, better from 25 values on.
 * Source: NIST/SEMATECH e-Handbook, 6.1.6; interval A. Bissell, Applied Statistics 39, 1990 (from memory).
 */
function capability(given: Input): z.output<typeof output> {
  const { lower, upper } = given;
  everyFault(
    () => lower < upper || impossible(['lower', 'upper'], 'the upper limit must be above the lower'),
    () => processOf(given),
  );
  return capabilityOf(processOf(given), lower, upper);
}

export const computation = defineComputation({
  name: 'capability',
  title: 'Capability of a lot',
  summary: 'How a lot’s spread sits between two limits, with the interval of the index.',
  words: ['capability', 'cp', 'cpk', 'tolerance', 'spread of a lot', 'how many are out'],
  input,
  output,
  equation: 'cp = (U − L)/6s; cpk = min(U − mean, mean − L)/3s; ± 1.96·√(1/(9n) + cpk²/(2(n − 1)))',
  tex: 'C_p=\\frac{U-L}{6s},\\qquad C_{pk}=\\frac{\\min(U-\\bar x,\\,\\bar x-L)}{3s},\\qquad C_{pk}\\pm1.96\\sqrt{\\frac{1}{9n}+\\frac{C_{pk}^2}{2(n-1)}}',
  source: 'NIST/SEMATECH e-Handbook, 6.1.6; interval Bissell, 1990 (from memory)',
  validity: 'near normal values that hold still; interval approximate, better from 25 values on',
  assumptions: ({ n, values }) => [
    'values and limits are in one unit',
    'near normal values from work that holds still',
    ...(n === undefined && values === undefined ? ['how many values is not known: no interval'] : []),
  ],
  cautions: ({ n, values }) =>
    (values?.length ?? n ?? ENOUGH) < ENOUGH
      ? [`Fewer than ${ENOUGH} values: the index can be far off; go by its interval.`]
      : [],
  example: {
    inputs: { mean: 16, s: 2, n: 30, lower: 8, upper: 20 },
    result: { cp: 1, cpk: 0.6666666666666666, interval95: [0.4577071219677252, 0.8756262113656081] },
  },
  headline: () => ['cpk'],
  compute: capability,
});
