import { z } from 'zod';
import { choice } from '../../../shared/schemas/fields.ts';
import { bare, bareList } from '../../../shared/schemas/number-fields.ts';
import { outList, outNumber, outPlace, outText } from '../../../shared/schemas/outputs.ts';
import { defineComputation, nothing } from '../kit/computation.ts';
import { grubbsScores } from '../statistics/grubbs.ts';
import { medianMadScores } from '../statistics/median-mad.ts';

const input = z.strictObject({
  values: bareList('the values, all in one unit, three at the least', { fewest: 3, beyond: 1e12 }),
  method: choice(
    ['median-mad', 'grubbs'],
    'scores by the median, or the test of the value farthest from the mean',
  ),
  tail: choice(['two', 'upper', 'lower'], 'side to look on; left out, both').optional(),
  alpha: bare('Grubbs: chance of flagging a good value; left out, .05', { above: 0, below: 1 }).optional(),
});

const output = z.object({
  scores: outList(outNumber('distance from the middle in units of the scatter, signed'), 'one per value'),
  flagged: outList(outPlace('which value'), 'the values past the critical score'),
  critical: outNumber('score past which a value is flagged'),
  summary: outText('which of them stands out, in one line'),
});

type Input = z.output<typeof input>;

/** The answer is which value stands out, as it was entered. */
function summaryOf(flagged: readonly number[], values: readonly number[]): string {
  if (flagged.length === 0) return 'none stands out';
  const [first = 0] = flagged;
  return flagged.length === 1
    ? `${values[first]} stands out, number ${first + 1} of the list`
    : `${flagged.length} of ${values.length} stand out, the first is number ${first + 1} of the list`;
}

/**
 * Which of some values does not belong with the rest.
 *
 * Equation: median-mad: M = .6745 (x − x̃)/MAD, flagged past 3.5; grubbs: G = (x − x̄)/s, the farthest out flagged
 * past (n − 1)/√n · √(t²/(n − 2 + t²)), t above with chance α/n, two-sided α/(2n), on n − 2 degrees
 *
 * @param values [1] three or more, all in one unit
 * @param method [1] `median-mad` or `grubbs`
 * @param tail [1] `two`, `upper` or `lower`; left out, two
 * @param alpha [1] Grubbs: chance of flagging a good value, between zero and one; left out, .05
 * @returns scores [1] signed, flagged [1] indices from zero, critical [1], summary [1]
 *
 * Validity: near normal values but for the outlier. Where more than half are alike (MAD zero) median-mad divides by
 * 1.253314 times the mean distance from the median instead; all alike, every score is zero.
 * Source: B. Iglewicz, D. Hoaglin, 1993, and F. Grubbs, 1969, as in the NIST/SEMATECH e-Handbook, 1.3.5.17.
 */
function outliers({ values, method, tail = 'two', alpha = 0.05 }: Input): z.output<typeof output> {
  const found = method === 'grubbs' ? grubbsScores(values, tail, alpha) : medianMadScores(values, tail);
  return {
    scores: [...found.scores],
    flagged: [...found.flagged],
    critical: found.critical,
    summary: summaryOf(found.flagged, values),
  };
}

function assumptionsOf({ values, method, tail, alpha }: Input): string[] {
  const scatter = method === 'median-mad' ? medianMadScores(values, 'two').scatter : undefined;
  return [
    'all values are in one unit and near normal but for the outlier',
    ...(tail === undefined ? ['looked for on both sides'] : []),
    ...(method === 'grubbs'
      ? ['the value farthest out is tested alone: two can hide each other']
      : ['a score past 3.5 is flagged']),
    ...(method === 'grubbs' && alpha === undefined ? ['a good value is flagged one time in twenty'] : []),
    ...(scatter === 'mean'
      ? ['more than half are alike: the scatter is taken from the mean distance instead']
      : []),
    ...(scatter === 'none' ? ['all values are alike: nothing stands out'] : []),
  ];
}

export const computation = defineComputation({
  name: 'outliers',
  title: 'Values that stand out',
  summary: 'Scores of values against the rest, and which of them does not belong.',
  words: ['outlier', 'odd one out', 'one valve differs', 'stray reading', 'median', 'Grubbs'],
  input,
  output,
  equation: 'median-mad: M = .6745·(x − median)/MAD; grubbs: G = (x − mean)/s',
  tex: 'M_i=\\frac{0.6745\\,(x_i-\\tilde x)}{\\mathrm{MAD}},\\qquad G_i=\\frac{x_i-\\bar x}{s},\\qquad G_\\mathrm{crit}=\\frac{n-1}{\\sqrt n}\\sqrt{\\frac{t^2}{n-2+t^2}}',
  source: 'Iglewicz and Hoaglin, 1993; Grubbs, 1969; NIST/SEMATECH e-Handbook, 1.3.5.17',
  validity: 'near normal values but for the outlier; Grubbs for one outlier',
  assumptions: assumptionsOf,
  cautions: nothing,
  example: {
    inputs: {
      values: [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57],
      method: 'grubbs',
      tail: 'upper',
    },
    result: {
      scores: [
        -0.4493752441566245, -0.4354973633053232, -0.3938637207514194, -0.3541225164954203,
        -0.284733112238914, -0.2828406739410093, -0.2683319803237398, 2.468764611212451,
      ],
      flagged: [7],
      critical: 2.0316520015499435,
      summary: '245.57 stands out, number 8 of the list',
    },
  },
  headline: () => ['summary'],
  compute: outliers,
});
