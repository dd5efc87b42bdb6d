import { z } from 'zod';
import { defined } from '../../../shared/defined.ts';
import { impossible } from '../../../shared/problems/faults.ts';
import { out, outList, outNumber, outWord } from '../../../shared/schemas/outputs.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { defineComputation } from '../kit/computation.ts';
import { fitThroughLift, segmentRatiosOf } from '../ratio-readings/through-lift.ts';
import { throughLiftExample } from '../ratio-readings/through-lift-example.ts';
import { lightPass, refuseFalling, runningPass } from '../ratio-readings/through-lift-fields.ts';
import { throughLiftAssumptions, throughLiftCautions } from '../ratio-readings/through-lift-words.ts';

const input = z.strictObject({
  pairs: lightPass,
  readingUncertainty: length('standard uncertainty of each lift', { sign: 'not-negative' }),
  secondPass: runningPass.optional(),
});

const PARAMETERS = ['ratio', 'lashLeftIn', 'compliance'] as const;

const output = z.object({
  ratio: z.object({
    value: outNumber('rocker ratio'),
    standardUncertainty: outNumber('its standard uncertainty'),
  }),
  lashLeftIn: z.object({
    value: out('length', 'lash left in at the valve, negative where the line starts above zero'),
    standardUncertainty: out('length', 'its standard uncertainty'),
  }),
  compliance: z
    .object({
      value: out('compliance', 'valve lift lost per load of the spring'),
      standardUncertainty: out('compliance', 'its standard uncertainty'),
    })
    .optional(),
  correlations: outList(
    outList(outNumber('coefficient'), 'one row'),
    'how the estimates go together, in the order of identifiable',
  ),
  residuals: outList(out('length', 'valve lift less fit'), 'per station, the light pass first'),
  segmentRatios: outList(outNumber('ratio of the step'), 'from each station to the next, light pass'),
  runningSegmentRatios: outList(outNumber('ratio of the step'), 'the same in the second pass').optional(),
  identifiable: outList(outWord(PARAMETERS, 'name of an estimate'), 'what these readings can tell apart'),
});

type Input = z.output<typeof input>;

/**
 * Rocker ratio, lash left in and give of the train from lifts read at stations through the lift.
 *
 * Equation: V = R·L − g − C·F by least squares, F = 0 on the light spring, springSeatLoad + springRate·V under the
 * running one; standard deviation of each station u·√(1 + R²)
 *
 * @param pairs [m] stations {lobeLift, valveLift} on the light spring, not negative, rising, at least three
 * @param readingUncertainty [m] standard uncertainty u of each lift, not negative
 * @param secondPass [m] pairs again under the running spring, with springSeatLoad [N], not negative, and springRate
 * [N/m], above zero; may be left out
 * @returns ratio {value, standardUncertainty} [1], lashLeftIn {value, standardUncertainty} [m] (negative where the
 * line starts above zero), compliance {value, standardUncertainty} [m/N] with both passes alone, correlations [1] in
 * the order of identifiable, residuals [m], segmentRatios [1], runningSegmentRatios [1], identifiable [1]
 * @throws impossible-input when a lift is not above the one before
 * @throws impossible-input when the stations stand so near together that a double can't tell them apart
 * @throws impossible-input when the ratio comes out at zero, below, or above 100
 *
 * Validity: one ratio through the lift; five stations can't tell a ratio that changes.
 * Source: JCGM 100:2008, H.3 (the straight line); the third term derived here.
 */
function ratioThroughLift({ pairs, readingUncertainty, secondPass }: Input): z.output<typeof output> {
  refuseFalling(pairs, secondPass?.pairs ?? []);
  const { ratio, lashLeftIn, compliance, correlations, residuals } = fitThroughLift(
    pairs,
    secondPass,
    readingUncertainty,
  );
  if (!(ratio.value > 0 && ratio.value <= 100)) {
    const fields = secondPass === undefined ? ['pairs'] : ['pairs', 'secondPass'];
    impossible(fields, 'give a ratio that no rocker has');
  }
  return {
    ratio,
    lashLeftIn,
    ...defined({ compliance }),
    correlations: correlations.map((row) => [...row]),
    residuals: [...residuals],
    segmentRatios: segmentRatiosOf(pairs),
    ...(secondPass === undefined ? {} : { runningSegmentRatios: segmentRatiosOf(secondPass.pairs) }),
    identifiable: PARAMETERS.slice(0, correlations.length),
  };
}

export const computation = defineComputation({
  name: 'ratio-through-lift',
  title: 'Ratio through the lift',
  summary: 'Ratio, lash left in and give of the train from lifts at stations, on one spring or on both.',
  words: [
    'ratio through lift',
    'lash left in',
    'flex',
    'deflection',
    'stiffness',
    'ratio at .200',
    'light and running spring',
  ],
  input,
  output,
  equation: 'V = R·L − g − C·F by least squares; F = 0 light, seat load + rate·V running; s = u·√(1 + R²)',
  tex: 'V=R\\,L-g-C\\,F,\\qquad s=u\\sqrt{1+R^2}',
  source: 'JCGM 100:2008, H.3 (straight line); third term derived here',
  validity: 'one ratio through the lift; five stations can’t tell a ratio that changes with lift',
  assumptions: throughLiftAssumptions,
  cautions: throughLiftCautions,
  example: throughLiftExample,
  headline: () => ['ratio.value'],
  compute: ratioThroughLift,
  heavy: true,
});
