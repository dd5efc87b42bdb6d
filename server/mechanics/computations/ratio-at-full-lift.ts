import { z } from 'zod';
import { impossible } from '../../../shared/problems/faults.ts';
import { choice } from '../../../shared/schemas/fields.ts';
import { bareList } from '../../../shared/schemas/number-fields.ts';
import { out, outList, outNumber, outText } from '../../../shared/schemas/outputs.ts';
import { defineComputation } from '../kit/computation.ts';
import { fullLiftExample } from '../ratio-readings/full-lift-example.ts';
import { fullLiftAssumptions, fullLiftCautions } from '../ratio-readings/full-lift-words.ts';
import { lobeForm, lobeLift, valveLift } from '../ratio-readings/lift-fields.ts';
import { judgeNominals, nominalVerdict } from '../ratio-readings/nominal-verdicts.ts';
import { ratioBudget } from '../ratio-readings/ratio-budget.ts';

const input = z.strictObject({
  valveLift,
  lobeLift,
  sameIndicator: z.boolean().meta({ description: 'one indicator read both lifts' }),
  spring: choice(['light', 'running'], 'spring on the valve while it was read'),
  nominals: bareList('nominal ratios to set the measured one against', {
    above: 0,
    beyond: 100,
    fewest: 0,
  }).optional(),
});

const budgetLine = z.object({
  source: outText('where it comes from'),
  contribution: outNumber('size of the sensitivity times the standard uncertainty'),
  share: outNumber('part of the combined variance; negative where shared errors cancel'),
});

const nominal = z.object({
  ratio: outNumber('nominal ratio'),
  verdict: nominalVerdict,
  needsValveLift: out('length', 'valve lift this nominal needs on this lobe'),
});

const output = z.object({
  ratio: outNumber('valve lift over lobe lift'),
  standardUncertainty: outNumber('combined standard uncertainty of the ratio'),
  degreesOfFreedom: outNumber('effective degrees of freedom; left out where without limit').optional(),
  coverageFactor: outNumber('factor for 95 %, at the degrees of freedom truncated downward'),
  interval95: z.tuple([z.number(), z.number()]).meta({ description: '95 % interval, low and high' }),
  budget: outList(budgetLine, 'where the uncertainty comes from; the shares add up to one'),
  nominals: outList(nominal, 'each nominal against the interval').optional(),
});

type Input = z.output<typeof input>;

/**
 * Rocker ratio from valve lift and lobe lift at full lift, with its 95 % interval and where that comes from.
 *
 * Equation: R = V/L; u_R² = Σ(c_i u_i)² + 2 c_V c_L u_V u_L r, c_V = 1/L, c_L = −R/L; each lift's u from s/√n
 * (s pooled with usualScatter, where given, at 8 degrees of freedom), graduation/(2√3) and errorLimit/√3; r = .5 between the error limits of one indicator; interval R ± t_95(⌊ν⌋) u_R
 *
 * @param valveLift [m] passes at the valve {readings, graduation, errorLimit, usualScatter}, above zero; errorLimit and
 * usualScatter not negative; usualScatter may be left out
 * @param lobeLift [m] passes at the lifter likewise, or {value, errorLimit, source} with its error limit alone
 * @param sameIndicator [1] whether one indicator read both lifts; a card or caliper shares nothing with it
 * @param spring [1] on the valve: `light` gives the geometric ratio, `running` what is left after flex
 * @param nominals [1] nominal ratios to set the measured one against, above zero; may be left out
 * @returns ratio, standardUncertainty, degreesOfFreedom, coverageFactor, interval95, budget {source, contribution,
 * share} [1]; nominals {ratio [1], verdict [1], needsValveLift [m]}
 * @throws impossible-input when the ratio comes out above 100
 *
 * Validity: errors small against the lifts; one valve, one set-up, at full lift.
 * Source: JCGM 100:2008, 4.2, 4.3.7, 5.2 and G.4; the correlation is judgement (no published source).
 */
function ratioAtFullLift(given: Input): z.output<typeof output> {
  const found = ratioBudget(given.valveLift, lobeForm(given.lobeLift), given.sameIndicator);
  if (found.ratio > 100) impossible(['valveLift', 'lobeLift'], 'give a ratio above 100');
  const { expanded, ...combined } = found.combined;
  const interval95: [number, number] = [found.ratio - expanded, found.ratio + expanded];
  return {
    ratio: found.ratio,
    ...combined,
    interval95,
    budget: [...found.budget],
    ...(given.nominals === undefined
      ? {}
      : { nominals: judgeNominals(given.nominals, interval95, found.lobeLift) }),
  };
}

export const computation = defineComputation({
  name: 'ratio-at-full-lift',
  title: 'Ratio at full lift',
  summary:
    'Rocker ratio from valve lift and lobe lift, with its 95 % interval, where that comes from, and each nominal against it.',
  words: [
    'rocker ratio',
    'what ratio is it',
    'valve lift over lobe lift',
    'measured ratio',
    'uncertainty',
    '1.6 or 1.65',
    'lift is short',
  ],
  input,
  output,
  equation: 'R = V/L; u_R² = Σ(c·u)² + 2·c_V·c_L·u_V·u_L·r; interval R ± t_95(ν)·u_R',
  tex: 'R=\\frac{V}{L},\\qquad u_R^2=\\sum_i (c_i u_i)^2+2\\,c_V c_L\\,u_V u_L\\,r,\\qquad R\\pm t_{95}(\\nu_\\mathrm{eff})\\,u_R',
  source:
    'JCGM 100:2008, 4.2, 4.3.7, 5.2 and G.4; r = .5 for one indicator is judgement, no published source',
  validity: 'errors small against the lifts; one valve, one set-up, at full lift',
  assumptions: (given) => fullLiftAssumptions({ ...given, lobe: lobeForm(given.lobeLift) }),
  cautions: (given) => fullLiftCautions({ ...given, lobe: lobeForm(given.lobeLift) }),
  example: fullLiftExample,
  headline: () => ['ratio'],
  compute: ratioAtFullLift,
});
