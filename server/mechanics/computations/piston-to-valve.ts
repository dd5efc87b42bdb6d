import { z } from 'zod';
import { impossible } from '../../../shared/problems/faults.ts';
import { choice, listOf } from '../../../shared/schemas/fields.ts';
import { ratio } from '../../../shared/schemas/number-fields.ts';
import { out, outList } from '../../../shared/schemas/outputs.ts';
import { angle, length } from '../../../shared/schemas/quantity-fields.ts';
import { evenIfFaulty, oneOfTwoForms, twoFormsJsonSchema } from '../../../shared/schemas/two-forms.ts';
import { turningCaution } from '../cam/caution.ts';
import { defineComputation } from '../kit/computation.ts';
import { everyFault } from '../kit/every-fault.ts';
import { defaultLimit } from '../kit/limits.ts';
import { judged, verdictInputs, verdictOutputs } from '../kit/verdict.ts';
import { cardFields } from '../lobe/card-fields.ts';
import { orderedReadings } from '../lobe/check-readings.ts';
import { curveOfCard, curveOfReadings, type LiftCurve } from '../lobe/lift-curve.ts';
import { sliderCrank } from '../slider-crank/slider-crank.ts';
import { pistonToValveExample } from '../valve-clearance/example.ts';
import { gapCurve } from '../valve-clearance/gap-curve.ts';
import { leastGap } from '../valve-clearance/least-gap.ts';
import { knownStretch, wholeDegrees } from '../valve-clearance/stretch.ts';
import { clearanceAssumptions, clearanceCautions } from '../valve-clearance/words.ts';

const input = z
  .strictObject({
    stroke: length('stroke of the crank, twice its throw'),
    rodLength: length('connecting rod, centre to centre'),
    pinOffset: length(
      'piston pin off the bore’s line, positive toward the side the crankpin moves to after top dead centre; left out, zero',
      { sign: 'any' },
    ).optional(),
    valveAngle: angle('valve’s line against the bore’s', { sign: 'not-negative' }),
    floor: choice(['pocket', 'flat'], 'a pocket cut to the valve’s angle, or a flat crown'),
    closedGapAtTdc: length('drop of the closed valve to the piston at top dead centre, along the valve', {
      sign: 'not-negative',
    }),
    side: choice(['intake', 'exhaust'], 'which valve'),
    profile: z.strictObject(cardFields).meta({ description: 'the lobe, as on its cam card' }).optional(),
    lifts: listOf(
      z.strictObject({
        crankAngle: angle('crank angle after top dead centre, negative before'),
        lift: length('lift read at the lobe', { sign: 'not-negative' }),
      }),
      'lift readings through the cycle or about top dead centre, instead of the card',
      2,
    ).optional(),
    ratio: ratio('rocker ratio, valve over lobe; the measured one where there is one'),
    lash: length('gap at the valve tip with the valve closed; left out, zero', {
      sign: 'not-negative',
    }).optional(),
    advance: angle('crank degrees the cam is moved early; negative late; left out, zero').optional(),
    ...verdictInputs,
  })
  .superRefine(oneOfTwoForms(['profile'], ['lifts']), evenIfFaulty)
  .meta(twoFormsJsonSchema(['profile'], ['lifts']));

const output = z.object({
  ...verdictOutputs,
  margin: out('length', 'least gap between valve and piston along the valve, negative where they would meet'),
  atCrankAngle: out('angle', 'crank angle of the least gap after top dead centre, negative before'),
  curve: outList(
    z.object({
      crankAngle: out('angle', 'after top dead centre'),
      gap: out('length', 'gap along the valve'),
    }),
    'the gap at each whole crank degree while the valve is open, and on to top dead centre',
  ),
  radialShift: outList(
    z.object({
      crankAngle: out('angle', 'after top dead centre'),
      shift: out('length', 'sideways move of the piston under the valve since top dead centre'),
    }),
    'how far the pocket has moved sideways under the valve, at the same degrees',
  ),
});

type Given = z.output<typeof input>;

function lobeOf(given: Given): LiftCurve {
  const { side, profile, lifts = [], advance = 0 } = given;
  if (profile !== undefined) return curveOfCard(profile, side, advance, '/profile');
  return curveOfReadings(orderedReadings(lifts, '/lifts'), advance);
}

/** Where no lift is left the lash took it; without lash there was none to begin with. */
function refuseNoLift(given: Given): void {
  const { lash = 0, ratio: rockerRatio } = given;
  const { highest } = lobeOf(given);
  if (highest * rockerRatio - lash > 0) return;
  // A card’s lobe lift is above zero: only readings can be without any.
  const without = highest > 0 ? 'ratio' : 'lifts';
  impossible([lash > 0 ? 'lash' : without], 'leaves no lift: the valve would not open');
}

function refuseImpossible(given: Given): void {
  everyFault(
    () => sliderCrank(given.stroke, given.rodLength, given.pinOffset ?? 0),
    () => given.valveAngle < Math.PI / 2 || impossible(['valveAngle'], 'must be below 90°'),
    () => refuseNoLift(given),
  );
}

/**
 * The least gap between a valve and its piston along the valve, over all the time the valve is open and at TDC.
 *
 * Equation: c(θ) = c₀ + D(θ)·(k·n)/(v·n) − lift, pocket cosγ, flat crown 1/cosγ; lift = lobe lift·ratio − lash, not below
 * zero; radial shift = D·sinγ
 *
 * @param stroke [m] above zero
 * @param rodLength [m] above half the stroke
 * @param pinOffset [m] positive toward the side the crankpin moves to after TDC; left out, zero
 * @param valveAngle [rad] γ between valve and bore, 0 to below 90°
 * @param floor [1] `pocket` (floor along the valve head) or `flat` (crown square to the bore)
 * @param closedGapAtTdc [m] c₀ along the valve at true TDC, closed valve to contact, not negative
 * @param side [1] `intake` or `exhaust`
 * @param profile [m, rad] the cam card: lobeLift, centreline, durations, as `lobe-profile`; or lifts
 * @param lifts [rad, m] crankAngle after true TDC and lift at the lobe, two or more within 720°, in any order; or profile
 * @param ratio [1] rocker ratio, above zero
 * @param lash [m] at the valve tip, not negative; left out, zero
 * @param advance [rad] crank, positive earlier, for either side; left out, zero
 * @param limit [m] least gap wanted; left out, the default of the side
 * @param uncertainty [m] half-width of the gap's 95 % interval; left out, zero
 * @returns margin [m], limit [m], verdict, atCrankAngle [rad], curve (crankAngle [rad], gap [m]) and radialShift
 * (crankAngle [rad], shift [m]) at each whole degree while open and on to TDC
 * @throws required or not-allowed when not exactly one of profile and lifts is given
 * @throws impossible-input when rod, stroke and offset make no crank drive
 * @throws impossible-input when the valve angle is 90° or more
 * @throws impossible-input when the card is one no lobe can have, or readings repeat an angle or pass 720°
 * @throws impossible-input when the lash takes up all the lift
 *
 * Validity: rigid parts; no piston rock, rod stretch, valve float or hydraulic pump-up.
 * Source: derived here (ray and plane); slider-crank of J. B. Heywood, Internal Combustion Engine Fundamentals (1988), 2.4.
 */
function pistonToValve(given: Given): z.output<typeof output> {
  refuseImpossible(given);
  const crank = sliderCrank(given.stroke, given.rodLength, given.pinOffset ?? 0);
  const lobe = lobeOf(given);
  const lash = given.lash ?? 0;
  const gaps = gapCurve({ ...given, crank, lobe, lash });
  const known = knownStretch(lobe);
  const least = leastGap(gaps, known.from, known.to);
  const degrees = wholeDegrees(known, gaps);
  return {
    ...judged(least.gap, given, defaultLimit(`piston-to-valve-${given.side}`)),
    atCrankAngle: least.crankAngle,
    curve: degrees.map((crankAngle) => ({ crankAngle, gap: gaps.gapAt(crankAngle) })),
    radialShift: degrees.map((crankAngle) => ({ crankAngle, shift: gaps.radialShiftAt(crankAngle) })),
  };
}

export const computation = defineComputation({
  name: 'piston-to-valve',
  title: 'Piston to valve',
  summary:
    'The least gap between valve and piston through the whole opening, where it is, and against a limit.',
  words: [
    'PTV',
    'valve to piston',
    'clearance',
    'clay',
    'pocket',
    'valve relief',
    'advance',
    'retard',
    'deck',
  ],
  input,
  output,
  equation:
    'gap = closed gap + drop × cos γ (pocket) or drop ÷ cos γ (flat) − (lobe lift × ratio − lash); sideways = drop × sin γ',
  tex: 'c(\\theta) = c_0 + D(\\theta)\\,\\frac{\\mathbf{k}\\cdot\\mathbf{n}}{\\mathbf{v}\\cdot\\mathbf{n}} - h(\\theta), \\qquad \\frac{\\mathbf{k}\\cdot\\mathbf{n}}{\\mathbf{v}\\cdot\\mathbf{n}} = \\begin{cases}\\cos\\gamma & \\text{pocket}\\\\ 1/\\cos\\gamma & \\text{flat}\\end{cases}',
  source:
    'derived here (ray and plane); slider-crank: J. B. Heywood, Internal Combustion Engine Fundamentals (1988), equations 2.4 and 2.5',
  validity: 'rigid parts: no piston rock, rod stretch, valve float or pump-up of a hydraulic lifter',
  assumptions: (given) => clearanceAssumptions(given, lobeOf(given).law),
  cautions: (given, result) => [turningCaution, ...clearanceCautions(lobeOf(given), result)],
  example: pistonToValveExample,
  headline: () => ['margin'],
  compute: pistonToValve,
});
