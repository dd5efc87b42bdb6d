import { z } from 'zod';
import { impossible } from '../../../shared/problems/faults.ts';
import { choice } from '../../../shared/schemas/fields.ts';
import { out, outNumber, outWord } from '../../../shared/schemas/outputs.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { usualDeflection } from '../kit/allowances.ts';
import { defineComputation } from '../kit/computation.ts';
import { everyFault } from '../kit/every-fault.ts';
import { AGAINST_USUAL, againstUsual, differenceWithin } from '../ratio-readings/deflection.ts';
import { deflectionAssumptions, deflectionCautions } from '../ratio-readings/deflection-words.ts';

const input = z.strictObject({
  lightLift: length('full lift at the valve on a light checking spring'),
  runningLift: length('full lift at the same valve on the running spring'),
  lobeLift: length('lobe lift, for the ratio that is lost').optional(),
  mount: choice(['stud', 'pedestal', 'shaft'], 'what the rocker stands on, for what is usual').optional(),
  errorLimit: length('how far off either lift can be, half-width; left out, no interval', {
    sign: 'not-negative',
  }).optional(),
});

const output = z.object({
  deflection: out('length', 'light lift less running lift; negative where the running spring reads more'),
  ratioLost: outNumber('deflection over lobe lift; only with a lobe lift').optional(),
  interval95: z
    .tuple([out('length', 'low end'), out('length', 'high end')])
    .meta({ description: '95 % interval of the deflection; only with an error limit' })
    .optional(),
  usual: z
    .object({ from: out('length', 'from'), to: out('length', 'to') })
    .meta({ description: 'what a running spring usually takes on this mount' })
    .optional(),
  against: outWord(
    AGAINST_USUAL,
    'the deflection against what is usual; none without a mount, or where the running spring reads more',
  ),
});

type Given = z.output<typeof input>;

/** A lift that would need a ratio above 100 on this lobe. */
function refuseRatios({ lightLift, runningLift, lobeLift }: Given): void {
  if (lobeLift === undefined) return;
  const refuse = (field: string, lift: number) => () =>
    lift <= 100 * lobeLift || impossible([field, 'lobeLift'], 'give a ratio above 100');
  everyFault(refuse('lightLift', lightLift), refuse('runningLift', runningLift));
}

/**
 * What the running spring takes off the lift at the valve: lift on a light spring less lift on the running one.
 *
 * Equation: d = light − running; ratio lost = d/L; u = errorLimit/√3 each, r = .5 between them: U = 1.96·errorLimit/√3
 *
 * @param lightLift [m] full lift at the valve on a light spring, above zero
 * @param runningLift [m] full lift at the same valve on the running spring, above zero
 * @param lobeLift [m] lobe lift, above zero; left out, no ratioLost
 * @param mount [1] `stud`, `pedestal` or `shaft`; left out, nothing usual to set it against
 * @param errorLimit [m] half-width of what either lift can be off, not negative; left out, no interval
 * @returns deflection [m], ratioLost [1], interval95 [m], usual {from [m], to [m]}, against [1]: `less` when d + U is under
 * the usual, `more` when d − U is over it, else `usual`; `none` without a mount or where d is negative
 * @throws impossible-input when a lift gives a ratio above 100
 *
 * Validity: one valve, one solid lifter, one lash, one zero. No spring adds lift: a negative d is no deflection and is set
 * against nothing; within U nothing was seen, beyond it the readings are swapped or not alike, which is told.
 * Source: definition; JCGM 100:2008, 4.3.7 and 5.2.2, r by judgement; usual bands common practice, no published source.
 */
function deflection(given: Given): z.output<typeof output> {
  refuseRatios(given);
  const { lightLift, runningLift, lobeLift, mount, errorLimit } = given;
  const lost = lightLift - runningLift;
  const half = errorLimit === undefined ? undefined : differenceWithin(errorLimit);
  const usual = mount === undefined ? undefined : usualDeflection(mount);
  return {
    deflection: lost,
    ...(lobeLift === undefined ? {} : { ratioLost: lost / lobeLift }),
    ...(half === undefined ? {} : { interval95: [lost - half, lost + half] }),
    ...(usual === undefined ? {} : { usual: { from: usual.from, to: usual.to } }),
    against: usual === undefined ? 'none' : againstUsual(lost, half ?? 0, usual),
  };
}

const inch = (value: number) => ({ value, unit: 'in' });

export const computation = defineComputation({
  name: 'deflection',
  title: 'Deflection under the running spring',
  summary:
    'What the running spring takes off the lift at the valve, as ratio too, and whether that is usual.',
  words: [
    'flex',
    'light spring',
    'checking spring',
    'running spring',
    'lift is short',
    'stud flex',
    'loaded ratio',
  ],
  input,
  output,
  equation: 'd = light lift − running lift; ratio lost = d/L; U = 1.96·error limit/√3 (r = .5)',
  tex: 'd=V_\\mathrm{light}-V_\\mathrm{running},\\qquad \\Delta R=\\frac{d}{L},\\qquad U=1.96\\sqrt{2u^2-2ru^2},\\quad u=\\frac{a}{\\sqrt 3},\\ r=\\tfrac12',
  source:
    'definition; JCGM 100:2008, 4.3.7 and 5.2.2, r = .5 for one indicator is judgement; usual bands are common practice, no published source',
  validity: 'one valve, the same solid lifter, lash and zero on both springs',
  assumptions: deflectionAssumptions,
  cautions: (_given, result) => deflectionCautions(result),
  example: {
    inputs: {
      lightLift: inch(0.5592),
      runningLift: inch(0.544),
      lobeLift: inch(0.35),
      mount: 'stud',
      errorLimit: inch(0.0025),
    },
    result: {
      deflection: inch(0.0152),
      ratioLost: 0.0152 / 0.35,
      interval95: [
        inch(0.0152 - (1.959963984540054 * 0.0025) / Math.sqrt(3)),
        inch(0.0152 + (1.959963984540054 * 0.0025) / Math.sqrt(3)),
      ],
      usual: { from: inch(0.005), to: inch(0.04) },
      against: 'usual',
    },
  },
  headline: () => ['deflection'],
  compute: deflection,
});
