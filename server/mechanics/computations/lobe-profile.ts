import { z } from 'zod';
import { choice } from '../../../shared/schemas/fields.ts';
import { out, outList, outText } from '../../../shared/schemas/outputs.ts';
import { angles } from '../../../shared/schemas/quantity-lists.ts';
import { withinHalfCycle } from '../cam/wrap.ts';
import { defineComputation, nothing } from '../kit/computation.ts';
import { cardFields, peakOf } from '../lobe/card-fields.ts';
import { lobeFlank } from '../lobe/lobe-flank.ts';

const input = z.strictObject({
  lobeLift: cardFields.lobeLift,
  centreline: cardFields.centreline,
  side: choice(['intake', 'exhaust'], 'which lobe'),
  durations: cardFields.durations,
  crankAngles: angles('crank angles after top dead centre, negative before; 720° on is the same place'),
});

const output = z.object({
  lifts: outList(out('length', 'lift at the lobe'), 'lift at each crank angle, in the order they came'),
  law: outText('how the lift runs between the durations given'),
  fitError: out('length', 'largest lift error at the durations given'),
});

/**
 * Lift of a lobe at any crank angle, from the few figures of its cam card.
 *
 * Equation: lift = lobeLift·s(u), s = 35u⁴ − 84u⁵ + 70u⁶ − 20u⁷, u falling from 1 at the nose to 0 at the seat along a
 * monotone cubic through the card's durations (a straight line for one duration)
 *
 * @param lobeLift [m] rise of the lifter on the lobe, above zero
 * @param centreline [rad] after TDC for an intake, before TDC for an exhaust, written positive, to 360°
 * @param side [1] `intake` or `exhaust`
 * @param durations [m, rad] `atLift` at the lobe (0 for the seat, below lobeLift) and `duration` in crank angle (above
 * zero, to 720°, falling with rising lift), in any order
 * @param crankAngles [rad] after TDC, negative before, to ±1440°, the lobe coming round every 720°
 * @returns lifts [m] in the order of crankAngles, law [words], fitError [m]
 * @throws impossible-input when a stated lift is not below the lobe lift or stands twice
 * @throws impossible-input when a duration does not fall with rising lift, is over 720° or leaves no base circle
 * @throws impossible-input when the centreline is over 360°
 *
 * Validity: symmetric lobes; zero outside the seat duration; slope continuous, zero at nose and seat.
 * Source: derived here; R. L. Norton, Cam Design and Manufacturing Handbook (2002), for the polynomial; F. N. Fritsch and
 * J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984), for the monotone cubic.
 */
function lobeProfile(given: z.output<typeof input>): z.output<typeof output> {
  const flank = lobeFlank(given);
  const peak = peakOf(given, given.side);
  return {
    lifts: given.crankAngles.map((angle) => flank.liftAt(Math.abs(withinHalfCycle(angle - peak)))),
    law: flank.law,
    fitError: flank.fitError,
  };
}

const deg = (value: number) => ({ value, unit: 'deg' });
const inch = (value: number) => ({ value, unit: 'in' });

export const computation = defineComputation({
  name: 'lobe-profile',
  title: 'Lobe profile',
  summary: 'Lift of the lobe at any crank angle, from the lift, centreline and durations of a cam card.',
  words: ['cam lobe', 'cam card', 'lift curve', 'duration at .050', 'advertised duration', 'lift at TDC'],
  input,
  output,
  equation:
    'lift = lobeLift·(35u⁴ − 84u⁵ + 70u⁶ − 20u⁷), u from 1 at the nose to 0 at the seat through the durations given',
  tex: 'L(\\theta) = L_0\\,(35u^4 - 84u^5 + 70u^6 - 20u^7), \\qquad u = u(|\\theta-\\theta_\\mathrm{peak}|)',
  source:
    'derived here; polynomial: R. L. Norton, Cam Design and Manufacturing Handbook (2002); monotone cubic: F. N. Fritsch and J. Butland (1984)',
  validity: 'symmetric lobes; between the card’s own points the lift is this law’s, not the maker’s',
  assumptions: (_given, result) => [
    'both flanks alike, about the centreline',
    `between the durations given: ${result.law}`,
    'lift at the lobe, lash not taken off',
  ],
  cautions: nothing,
  example: {
    inputs: {
      lobeLift: inch(0.5),
      centreline: deg(106),
      side: 'intake',
      durations: [{ atLift: inch(0), duration: deg(280) }],
      crankAngles: [deg(-34), deg(36), deg(106), deg(176), deg(246)],
    },
    result: {
      lifts: [inch(0), inch(0.25), inch(0.5), inch(0.25), inch(0)],
      law: '4-5-6-7 polynomial on each flank, seat duration as given',
      fitError: inch(0),
    },
  },
  headline: () => ['law'],
  compute: lobeProfile,
});
