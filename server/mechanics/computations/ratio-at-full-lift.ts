import { z } from 'zod';
import { impossible } from '../../../shared/problems/faults.ts';
import { bareList, choice, length, lengths } from '../../../shared/schemas/fields.ts';
import { out, outList, outNumber, outText, outWord } from '../../../shared/schemas/outputs.ts';
import { defineComputation } from '../kit/computation.ts';
import {
  type Contribution,
  type Correlation,
  combine,
  covarianceTerm,
  rectangular,
} from '../uncertainty/combine.ts';
import { type Sample, sampleOf } from '../uncertainty/mean.ts';

/** Coefficient between the error limits of one and the same indicator (design note, judgement). */
const SAME_INDICATOR = 0.5;

const readings = z.strictObject({
  readings: lengths('the peaks of the passes, in order'),
  graduation: length('smallest division of the dial'),
  errorLimit: length('error limit of a reading on the engine, half-width', { sign: 'not-negative' }),
});

const single = z.strictObject({
  value: length('lobe lift'),
  errorLimit: length('error limit of the value, half-width', { sign: 'not-negative' }),
  source: choice(['card', 'caliper', 'indicator'], 'where the value comes from'),
});

const input = z.strictObject({
  valveLift: readings.meta({ description: 'peaks read at the valve' }),
  lobeLift: z
    .union([readings, single])
    .meta({ description: 'lobe lift: passes at the lifter, or one value with its source' }),
  sameIndicator: z.boolean().meta({ description: 'one indicator read both lifts' }),
  spring: choice(['light', 'running'], 'spring on the valve while reading'),
  nominals: bareList('nominal ratios to set the reading against', { above: 0, beyond: 100 }).optional(),
});

const output = z.object({
  ratio: outNumber('valve lift over lobe lift'),
  standardUncertainty: outNumber('combined standard uncertainty of the ratio'),
  degreesOfFreedom: outNumber(
    'effective degrees of freedom as computed; left out if without limit',
  ).optional(),
  coverageFactor: outNumber('factor for 95 %'),
  interval95: z.tuple([z.number(), z.number()]).meta({ description: '95 % interval, low and high' }),
  budget: outList(
    z.object({
      source: outText('where it comes from'),
      contribution: outNumber('sensitivity times standard uncertainty'),
      share: outNumber('part of the combined variance; negative where shared errors cancel'),
    }),
    'where the uncertainty comes from',
  ),
  nominals: outList(
    z.object({
      ratio: outNumber('nominal ratio'),
      verdict: outWord(['agrees', 'differs', 'cannot-tell'], 'against the interval'),
      needsValveLift: out('length', 'valve lift this nominal needs on this lobe'),
    }),
    'each nominal against the interval',
  ).optional(),
});

type Input = z.output<typeof input>;
type Result = z.output<typeof output>;
type Lift = Input['valveLift'] | Input['lobeLift'];

interface Parts {
  readonly mean: number;
  readonly contributions: Contribution[];
  /** Where in the list the error limit stands. */
  readonly limitAt: number;
}

function partsOf(name: string, lift: Lift, sample: Sample, sensitivity: number): Parts {
  const contributions: Contribution[] = [];
  if (sample.s !== undefined) {
    contributions.push({
      source: `${name}, repeatability`,
      u: sample.s / Math.sqrt(sample.n),
      sensitivity,
      degreesOfFreedom: sample.n - 1,
    });
  }
  if ('graduation' in lift) {
    contributions.push({ source: `${name}, graduation`, u: rectangular(lift.graduation / 2), sensitivity });
  }
  contributions.push({ source: `${name}, error limit`, u: rectangular(lift.errorLimit), sensitivity });
  return { mean: sample.mean, contributions, limitAt: contributions.length - 1 };
}

function nominalsOf(nominals: readonly number[], low: number, high: number, lobeLift: number) {
  const inside = new Set(nominals.filter((nominal) => nominal >= low && nominal <= high));
  return nominals.map((nominal) => {
    const verdict: 'agrees' | 'differs' | 'cannot-tell' = !inside.has(nominal)
      ? 'differs'
      : inside.size === 1
        ? 'agrees'
        : 'cannot-tell';
    return { ratio: nominal, verdict, needsValveLift: nominal * lobeLift };
  });
}

/**
 * Rocker ratio from valve lift and lobe lift read at full lift, with its 95 % interval and where that comes from.
 *
 * Equation: R = V/L; (u_R)² = Σ(c_i u_i)² + 2 c_V c_L u_V u_L r, c_V = 1/L, c_L = −V/L²; Type A s/√n,
 * graduation g/(2√3), error limit a/√3; r = .5 between the error limits of one indicator; U = t_95(⌊ν_eff⌋) u_R
 *
 * @param valveLift [m] passes at the valve {readings, graduation, errorLimit}, above nought
 * @param lobeLift [m] passes at the lifter likewise, or {value, errorLimit, source}
 * @param sameIndicator [1] whether one indicator read both lifts; a card or caliper has nothing to correlate with
 * @param spring [1] spring on the valve: light gives the geometric ratio, running what is left after flex
 * @param nominals [1] nominal ratios to set the reading against, above nought; may be left out
 * @returns ratio, standardUncertainty, degreesOfFreedom, coverageFactor, interval95, budget [1]; nominals with
 * needsValveLift [m]
 * @throws impossible-input when the ratio comes out above 100
 *
 * Validity: errors small against the lifts; full lift, one valve, one set-up.
 * Source: JCGM 100:2008, 4.2, 4.3.7, 5.2, G.4; correlation by judgement (common practice, no published source).
 */
function ratioAtFullLift(given: Input): Result {
  const valve = sampleOf(given.valveLift.readings);
  const lobe =
    'readings' in given.lobeLift ? sampleOf(given.lobeLift.readings) : { n: 1, mean: given.lobeLift.value };
  const ratio = valve.mean / lobe.mean;
  if (ratio > 100) impossible(['valveLift', 'lobeLift'], 'give a ratio above 100');
  const v = partsOf('valve lift', given.valveLift, valve, 1 / lobe.mean);
  const l = partsOf('lobe lift', given.lobeLift, lobe, -ratio / lobe.mean);
  const contributions = [...v.contributions, ...l.contributions];
  const shares =
    given.sameIndicator && ('readings' in given.lobeLift || given.lobeLift.source === 'indicator');
  const correlations: Correlation[] = shares
    ? [{ first: v.limitAt, second: v.contributions.length + l.limitAt, coefficient: SAME_INDICATOR }]
    : [];
  const combined = combine(contributions, correlations);
  const variance = combined.standardUncertainty ** 2;
  const budget = contributions.map(({ source, u, sensitivity }) => ({
    source,
    contribution: Math.abs(sensitivity) * u,
    share: variance === 0 ? 0 : (sensitivity * u) ** 2 / variance,
  }));
  if (shares) {
    const term = covarianceTerm(contributions, correlations);
    budget.push({
      source: 'one indicator for both, errors that cancel',
      contribution: Math.sqrt(Math.abs(term)),
      share: variance === 0 ? 0 : term / variance,
    });
  }
  const interval95: [number, number] = [ratio - combined.expanded, ratio + combined.expanded];
  return {
    ratio,
    standardUncertainty: combined.standardUncertainty,
    ...(combined.degreesOfFreedom === undefined ? {} : { degreesOfFreedom: combined.degreesOfFreedom }),
    coverageFactor: combined.coverageFactor,
    interval95,
    budget,
    ...(given.nominals === undefined
      ? {}
      : { nominals: nominalsOf(given.nominals, interval95[0], interval95[1], lobe.mean) }),
  };
}

const inch = (value: number) => ({ value, unit: 'in' });

export const computation = defineComputation({
  name: 'ratio-at-full-lift',
  title: 'Ratio at full lift',
  summary:
    'Rocker ratio from valve lift and lobe lift, with its 95 % interval, its budget and what it says of each nominal.',
  words: [
    'rocker ratio',
    'what ratio is it',
    'valve lift',
    'lobe lift',
    'uncertainty',
    '1.6 or 1.65',
    'lift is short',
  ],
  input,
  output,
  equation: 'R = V/L; u_R² = Σ(c·u)² + 2·c_V·c_L·u_V·u_L·r; interval R ± t_95(ν_eff)·u_R',
  tex: 'R=\\frac{V}{L},\\qquad u_R^2=\\sum_i (c_i u_i)^2+2\\,c_V c_L\\,u_V u_L\\,r,\\qquad R\\pm t_{95}(\\nu_\\mathrm{eff})\\,u_R',
  source:
    'JCGM 100:2008, 4.2, 4.3.7, 5.2 and G.4; correlation .5 between limits of one indicator by judgement',
  validity: 'errors small against the lifts; one valve, one set-up, at full lift',
  assumptions: (given) => [
    'the error limits are rectangular',
    given.sameIndicator
      ? 'error limits of one indicator go together by .5'
      : 'the two lifts were read independently',
    ...(given.valveLift.readings.length === 1
      ? ['a single pass at the valve: its repeatability is not known']
      : []),
  ],
  cautions: (given) => [
    ...(given.spring === 'running'
      ? [
          'A running-spring ratio is what is left after flex; only a light-spring ratio is set against a stamp.',
        ]
      : []),
    'Turn the engine by hand only; any resistance: stop, back off, find out.',
  ],
  example: {
    inputs: {
      valveLift: {
        readings: [0.5251, 0.5248, 0.5252, 0.5249, 0.525].map(inch),
        graduation: inch(0.0005),
        errorLimit: inch(0.001),
      },
      lobeLift: {
        readings: [0.3501, 0.3499, 0.35, 0.3502, 0.3498].map(inch),
        graduation: inch(0.0005),
        errorLimit: inch(0.001),
      },
      sameIndicator: false,
      spring: 'light',
      nominals: [1.5, 1.6],
    },
    result: {
      ratio: 1.5,
      standardUncertainty: 0.0030868935136518483,
      degreesOfFreedom: 35960.60595646657,
      coverageFactor: 1.960029956445566,
      interval95: [1.4939495962408849, 1.5060504037591151],
      budget: [
        {
          source: 'valve lift, repeatability',
          contribution: 0.0002020305089104151,
          share: 0.004283419596643506,
        },
        {
          source: 'valve lift, graduation',
          contribution: 0.0004123930494211612,
          share: 0.017847581652686052,
        },
        {
          source: 'valve lift, error limit',
          contribution: 0.0016495721976846449,
          share: 0.28556130644297684,
        },
        {
          source: 'lobe lift, repeatability',
          contribution: 0.00030304576336568484,
          share: 0.009637694092451845,
        },
        {
          source: 'lobe lift, graduation',
          contribution: 0.0006185895741317419,
          share: 0.04015705871854363,
        },
        {
          source: 'lobe lift, error limit',
          contribution: 0.0024743582965269678,
          share: 0.6425129394966981,
        },
      ],
      nominals: [
        {
          ratio: 1.5,
          verdict: 'agrees',
          needsValveLift: {
            value: 0.525,
            unit: 'in',
          },
        },
        {
          ratio: 1.6,
          verdict: 'differs',
          needsValveLift: {
            value: 0.56,
            unit: 'in',
          },
        },
      ],
    },
  },
  compute: ratioAtFullLift,
});
