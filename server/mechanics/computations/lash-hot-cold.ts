import { z } from 'zod';
import { defined } from '../../../shared/defined.ts';
import { CAN_BE } from '../../../shared/schemas/can-be.ts';
import { ratio } from '../../../shared/schemas/number-fields.ts';
import { out } from '../../../shared/schemas/outputs.ts';
import { length, quantity } from '../../../shared/schemas/quantity-fields.ts';
import { turningCaution } from '../cam/caution.ts';
import { defineComputation } from '../kit/computation.ts';
import { makerFirst } from '../springs/caution.ts';
import { lashGrowth } from '../thermal/lash-growth.ts';
import { materialField } from '../thermal/material-field.ts';
import { ORDINARY_HEIGHTS } from '../thermal/materials.ts';
import { printedFor } from '../thermal/printed-growth.ts';

const input = z.strictObject({
  hotLash: length('gap wanted at the valve tip with the engine hot', {
    sign: 'not-negative',
    canBe: CAN_BE.lash,
  }),
  temperatureRise: quantity('temperature-rise', 'how much hotter than when cold', { sign: 'not-negative' }),
  ratio: ratio('rocker ratio, valve over lobe'),
  coldFound: length('gap as it was found on the cold engine', {
    sign: 'not-negative',
    canBe: CAN_BE.lashFound,
  }).optional(),
  heights: z
    .strictObject({
      block: length('camshaft’s base circle up to the deck', { canBe: CAN_BE.engineLength }),
      head: length('deck up to the rocker’s pivot', { canBe: CAN_BE.engineLength }),
      seat: length('deck up to the valve seat', { sign: 'not-negative' }),
      valve: length('valve seat up to the valve’s tip', { canBe: CAN_BE.engineLength }),
      pushrod: length('camshaft’s base circle up to the pushrod’s cup: lifter and pushrod together', {
        canBe: CAN_BE.pushrod,
      }),
    })
    .meta({
      description: 'heights along the valvetrain, engine cold; left out, those of an ordinary pushrod engine',
    })
    .optional(),
  materials: z
    .strictObject({
      block: materialField('material of the block'),
      head: materialField('material of the head'),
      pushrod: materialField('material of the pushrod'),
      valve: materialField('material of the valve'),
    })
    .meta({ description: 'materials by name, or by their expansion' }),
});

const output = z.object({
  lashChange: out('length', 'growth of the gap from cold to hot; negative where it closes'),
  coldLash: out('length', 'gap to set cold so that the hot one comes out'),
  hotAsFound: out('length', 'gap that the one found cold becomes hot').optional(),
});

/**
 * The lash to set on a cold engine so that it comes out as wanted on a hot one.
 *
 * Equation: lashChange = ΔT·[r·α_b·H_b + α_h·((1 + r)·H_h − h_s) − r·α_p·L_p − α_v·L_v]; coldLash = hotLash − lashChange;
 * hotAsFound = coldFound + lashChange
 *
 * @param hotLash [m] gap at the valve tip wanted hot, not negative
 * @param temperatureRise [K] ΔT from cold to hot, not negative
 * @param ratio [1] rocker ratio r, valve over lobe, above zero
 * @param coldFound [m] gap as found cold, not negative; left out, what it becomes hot is not told
 * @param heights [m] `block` H_b (camshaft's base circle to deck), `head` H_h (deck to pivot), `seat` h_s (deck to
 * valve seat, not negative), `valve` L_v (seat to tip), `pushrod` L_p (camshaft's base circle to cup);
 * left out, those of an ordinary pushrod engine
 * @param materials [1/K] `block`, `head`, `pushrod`, `valve`: names of the materials table, what people call
 * them, or `{ expansion }`
 * @returns lashChange [m] (cold to hot, positive where the gap grows), coldLash [m] (negative where no cold setting
 * leaves a gap), hotAsFound [m] (with coldFound; not positive where nothing would be left of it)
 * @throws not-allowed when a material's name is not in the table
 *
 * Validity: every part at one temperature, straight heights, a rigid rocker; a first figure, not a measurement.
 * Source: model derived here; expansions by W. D. Callister, Materials Science and Engineering, table B.6.
 */
function lashHotCold(given: z.output<typeof input>): z.output<typeof output> {
  const { hotLash, coldFound, temperatureRise, ratio: rockerRatio, materials } = given;
  const { heights = ORDINARY_HEIGHTS.heights } = given;
  const lashChange = lashGrowth(rockerRatio, heights, materials, temperatureRise);
  return {
    lashChange,
    coldLash: hotLash - lashChange,
    ...defined({ hotAsFound: coldFound === undefined ? undefined : coldFound + lashChange }),
  };
}

const leavesNone =
  'The gap found cold closes before the engine is hot: the valve would be held off its seat. Don’t run it with that.';

const heldOpen =
  'The sum for the cold setting is below zero: set so, the valve would be held open cold. Measure a pair hot and cold.';

const inch = (value: number) => ({ value, unit: 'in' });

/** By hand: 70 K × [1.5·11.4·4.5 + 21.5·(2.5·5.2 − .4) − 1.5·12.3·9.7 − 11.7·5.0] millionths. */
const exampleChange = (70 * (76.95 + 270.9 - 178.965 - 58.5)) / 1e6;

export const computation = defineComputation({
  name: 'lash-hot-cold',
  title: 'Lash hot and cold',
  summary: 'What lash to set cold so that the hot lash comes out, from heights and materials.',
  words: [
    'hot lash',
    'cold lash',
    'valve lash',
    'expansion',
    'aluminium head',
    'aluminum head',
    'iron block',
  ],
  input,
  output,
  equation:
    'lash change = ΔT × [r·α_block·H_block + α_head·((1 + r)·H_head − h_seat) − r·α_pushrod·L_pushrod − α_valve·L_valve]; cold lash = hot lash − lash change; hot as found = cold found + lash change',
  tex: '\\Delta g = \\Delta T\\left[r\\,\\alpha_b H_b + \\alpha_h\\big((1+r)H_h - h_s\\big) - r\\,\\alpha_p L_p - \\alpha_v L_v\\right], \\qquad g_\\mathrm{cold} = g_\\mathrm{hot} - \\Delta g',
  source: 'model derived here; expansions by W. D. Callister, Materials Science and Engineering, table B.6',
  validity:
    'every part at one temperature, straight heights, a rigid rocker: a first figure, not a measurement',
  assumptions: () => [
    'block, head, pushrod and valve all warm up by the same amount; an exhaust valve runs hotter and closes its gap more',
    'the rocker, its stand and the lifter grow as the part they are counted with',
    'lash is at the valve tip',
  ],
  cautions: (given, { coldLash, hotAsFound }) => [
    ...(hotAsFound !== undefined && hotAsFound <= 0 ? [leavesNone] : []),
    ...(given.heights === undefined
      ? [`No heights were given: those of ${ORDINARY_HEIGHTS.source}, were taken, a guess for this one.`]
      : []),
    ...printedFor(given.materials),
    ...(coldLash < 0 ? [heldOpen] : []),
    'A first setting only: set one intake and one exhaust, run it up, and read them hot. Hot oil and exhaust burn.',
    turningCaution,
    makerFirst,
  ],
  example: {
    inputs: {
      hotLash: inch(0.02),
      temperatureRise: { value: 70, unit: 'degC' },
      ratio: 1.5,
      heights: { block: inch(4.5), head: inch(5.2), seat: inch(0.4), valve: inch(5), pushrod: inch(9.7) },
      materials: { block: 'grey-iron', head: 'aluminium-356', pushrod: 'steel-4140', valve: 'steel-1020' },
    },
    result: { lashChange: inch(exampleChange), coldLash: inch(0.02 - exampleChange) },
  },
  headline: () => ['coldLash'],
  compute: lashHotCold,
});
