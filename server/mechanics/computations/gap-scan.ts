import { z } from 'zod';
import { choice, listOf } from '../../../shared/schemas/fields.ts';
import { out, outPlace, outText, outWord } from '../../../shared/schemas/outputs.ts';
import { angle, length } from '../../../shared/schemas/quantity-fields.ts';
import { scanAssumptions, scanCautions } from '../gap-scan/cautions.ts';
import { halfWidthOf, leastOf } from '../gap-scan/least.ts';
import { stationsOf } from '../gap-scan/stations.ts';
import { scanAsk } from '../gap-scan/words.ts';
import { defineComputation } from '../kit/computation.ts';
import { defaultLimit } from '../kit/limits.ts';
import { judged, verdictInputs, verdictOutputs } from '../kit/verdict.ts';

const input = z.strictObject({
  readings: listOf(
    z.strictObject({
      crankAngle: angle('crank angle after top dead centre, negative before'),
      gap: length('gap read there along the valve', { sign: 'not-negative' }),
    }),
    'gaps read at three crank angles or more, in any order and steps',
    3,
  ),
  readingUncertainty: length('half-width of the 95 % interval of one reading; left out, no interval', {
    sign: 'not-negative',
  }).optional(),
  limit: verdictInputs.limit,
  side: choice(['intake', 'exhaust'], 'which valve, for its default limit').optional(),
});

const output = z.object({
  least: out(
    'length',
    'least gap: of the parabola through the least reading and its neighbours, or among all readings near it',
  ),
  atCrankAngle: out('angle', 'crank angle of the least gap after top dead centre, negative before'),
  leastReading: z
    .object({
      index: outPlace('which reading, in the order given'),
      gap: out('length', 'the gap as read'),
    })
    .meta({ description: 'the least of the readings' }),
  interval95: z
    .tuple([out('length', 'low end'), out('length', 'high end')])
    .meta({ description: '95 % interval of the least gap; not at an edge, nor without an uncertainty' })
    .optional(),
  atEdge: outWord(['none', 'first', 'last'], 'whether the least was read at an end, in order of crank angle'),
  limit: verdictOutputs.limit,
  verdict: verdictOutputs.verdict.optional(),
  ask: outText('what to read next: which way to go on, or where the steps are too wide').optional(),
});

type Given = z.output<typeof input>;

const limitOf = ({ side }: Given): number => defaultLimit(`piston-to-valve-${side ?? 'exhaust'}`);

/**
 * The least gap of a scan over the crank: between the readings, where it is, and whether the scan went far enough.
 *
 * Equation: P(θ) through the least reading and its neighbours at their own steps; least = min P, not above the least
 * reading; U = readingUncertainty·√(Σ lᵢ²), lᵢ Lagrange's polynomials at the least. With readingUncertainty and four
 * readings or more within 6° of the least: P by least squares through those, U = readingUncertainty·√(xᵀ(XᵀX)⁻¹x)
 *
 * @param readings [rad, m] crankAngle after TDC (negative before) and gap, not negative; 3 to 2000 in any order
 * @param readingUncertainty [m] half-width of one reading's 95 % interval, not negative; left out, no interval
 * @param limit [m] least gap wanted; left out, the piston-to-valve default of the side
 * @param side [1] `intake` or `exhaust`; left out, the default is the wider of the two, the exhaust's
 * @returns least [m], atCrankAngle [rad], leastReading {index [1], gap [m]}, interval95 [m], atEdge [1], limit [m],
 * verdict [1], ask [text]; at an edge least is the reading itself, and interval95 and verdict are left out
 * @throws impossible-input when there are fewer than three different crank angles
 *
 * Validity: smooth gaps, steps of 5° or less beside the least, else `ask`. An angle read twice counts with its least gap.
 * An end that reads as little as the least is an edge; of equal readings the parabola that reaches lowest. Angles are
 * exact and do not wrap. Readings that rise less than they err, with no more of them near: cautioned. One that lies
 * under the curve by more than they scatter decides with its neighbours alone. One that stands off the curve of its
 * neighbours by more than they scatter is named in `ask`; where it reads over them the interval holds both leasts, with
 * it and without it.
 * Source: Lagrange interpolation, NIST Digital Library of Mathematical Functions, 3.3(i); JCGM 100:2008, 5.1.2; the rule
 * for steps and the reach of the fit are calculated here.
 */
function gapScan(given: Given): z.output<typeof output> {
  const stations = stationsOf(given.readings);
  const scan = leastOf(stations, given.readingUncertainty);
  const ask = scanAsk(scan, stations);
  const half =
    scan.edge !== 'none' || given.readingUncertainty === undefined
      ? undefined
      : halfWidthOf(scan, given.readingUncertainty);
  const { limit, verdict } = judged(scan.least, { limit: given.limit, uncertainty: half }, limitOf(given));
  return {
    least: scan.least,
    atCrankAngle: scan.crankAngle,
    leastReading: { index: scan.reading.index, gap: scan.reading.gap },
    ...(half === undefined ? {} : { interval95: [scan.least - half, scan.least + half] }),
    atEdge: scan.edge,
    limit,
    ...(scan.edge === 'none' ? { verdict } : {}),
    ...(ask === undefined ? {} : { ask }),
  };
}

const scanned = ({ readings, readingUncertainty }: Given) => {
  const stations = stationsOf(readings);
  return { stations, scan: leastOf(stations, readingUncertainty) };
};

const inch = (value: number) => ({ value, unit: 'in' });
const deg = (value: number) => ({ value, unit: 'deg' });

/** .09 + .0005·(θ − 9)², in no order [deg, in]. */
const SCANNED = [
  [4, 0.1025],
  [0, 0.1305],
  [8, 0.0905],
  [16, 0.1145],
  [12, 0.0945],
] as const;

export const computation = defineComputation({
  name: 'gap-scan',
  title: 'Scan of a gap over the crank',
  summary: 'The least gap between the readings of a scan, where it is, and whether the scan went far enough.',
  words: ['piston to valve', 'PTV', 'clearance', 'every two degrees', 'least gap', 'scan', 'parabola', 'TDC'],
  input,
  output,
  equation:
    'parabola through the least reading and its neighbours, or by least squares through all readings within 6° of the least where they scatter; least = its lowest point; U = u·√(Σ l²), l the weights of the readings there',
  tex: 'P(\\theta)=\\sum_{i=1}^{3} g_i\\,\\ell_i(\\theta),\\qquad g_\\mathrm{least}=\\min_\\theta P(\\theta),\\qquad U=U_\\mathrm{reading}\\sqrt{\\sum_{i=1}^{3}\\ell_i(\\theta_\\mathrm{least})^2}',
  source:
    'Lagrange interpolation, NIST Digital Library of Mathematical Functions, 3.3(i); JCGM 100:2008, 5.1.2; the rule for steps and the reach of the fit are calculated here',
  validity:
    'smooth gaps; steps of 5° or less beside the least; crank angles exact and not wrapped; readings that rise by more than they err',
  assumptions: (given) => scanAssumptions(given, scanned(given).scan),
  cautions: (given, result) => {
    const { scan, stations } = scanned(given);
    return scanCautions(given, scan, stations, result);
  },
  // Least .09 at 9°, a quarter of a step from 8°: weights −.09375, .9375, .15625.
  example: {
    inputs: {
      readings: SCANNED.map(([crankAngle, gap]) => ({ crankAngle: deg(crankAngle), gap: inch(gap) })),
      readingUncertainty: inch(0.002),
      side: 'intake',
    },
    result: {
      least: inch(0.09),
      atCrankAngle: deg(9),
      leastReading: { index: 2, gap: inch(0.0905) },
      interval95: [
        inch(0.09 - 0.002 * Math.hypot(0.09375, 0.9375, 0.15625)),
        inch(0.09 + 0.002 * Math.hypot(0.09375, 0.9375, 0.15625)),
      ],
      atEdge: 'none',
      limit: inch(0.08),
      verdict: 'clear',
    },
  },
  headline: () => ['least'],
  compute: gapScan,
  heavy: true,
});
