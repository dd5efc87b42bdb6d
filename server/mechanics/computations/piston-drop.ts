import { z } from 'zod';
import { choice } from '../../../shared/schemas/fields.ts';
import { out, outList } from '../../../shared/schemas/outputs.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { angles } from '../../../shared/schemas/quantity-lists.ts';
import { turningCaution } from '../cam/caution.ts';
import { defineComputation } from '../kit/computation.ts';
import { pistonDrop } from '../slider-crank/piston-travel.ts';
import { sliderCrank } from '../slider-crank/slider-crank.ts';

const input = z.strictObject({
  stroke: length('stroke of the crank, twice its throw'),
  rodLength: length('connecting rod, centre to centre'),
  pinOffset: length(
    'piston pin off the bore’s line, positive toward the side the crankpin moves to after top dead centre; left out, zero',
    { sign: 'any' },
  ).optional(),
  crankAngles: angles('crank angles after top dead centre, negative before'),
  from: choice(
    ['crank-zero', 'true-tdc'],
    'where the angles count from: the crank throw along the bore, or the piston’s true top',
  ),
});

const output = z.object({
  drops: outList(
    out('length', 'piston down from its true top'),
    'drop at each crank angle, in the order they came',
  ),
  tdcAt: out('angle', 'true top dead centre, from crank-zero'),
  bdcAt: out('angle', 'true bottom dead centre, from crank-zero'),
  actualStroke: out('length', 'way from true top to true bottom'),
});

/**
 * How far the piston has dropped from its true top at given crank angles, with the pin in line or offset.
 *
 * Equation: D = √((l + a)² − e²) − a·cosθ − √(l² − (a·sinθ − e)²); TDC at asin(e/(l + a)), BDC at π + asin(e/(l − a))
 *
 * @param stroke [m] twice the crank throw a, above zero
 * @param rodLength [m] centre to centre l, above half the stroke
 * @param pinOffset [m] e, positive toward the side the crankpin moves to after TDC, any sign; left out, zero
 * @param crankAngles [rad] after top dead centre, negative before, to ±1440°
 * @param from [1] `crank-zero` (throw along the bore) or `true-tdc` (the piston's top)
 * @returns drops [m] in the order of crankAngles, tdcAt [rad] and bdcAt [rad] from crank-zero, actualStroke [m]
 * @throws impossible-input when the rod is not longer than half the stroke
 * @throws impossible-input when the offset leaves the crank no full turn
 *
 * Validity: rigid parts; crank axis on the bore's line; no piston rock.
 * Source: J. B. Heywood, Internal Combustion Engine Fundamentals (1988), equations 2.4 and 2.5; pin offset derived here.
 */
function pistonDrops(given: z.output<typeof input>): z.output<typeof output> {
  const crank = sliderCrank(given.stroke, given.rodLength, given.pinOffset ?? 0);
  const zero = given.from === 'true-tdc' ? 0 : crank.tdcAt;
  return {
    drops: given.crankAngles.map((angle) => pistonDrop(crank, angle - zero)),
    tdcAt: crank.tdcAt,
    bdcAt: crank.bdcAt,
    actualStroke: crank.actualStroke,
  };
}

export const computation = defineComputation({
  name: 'piston-drop',
  title: 'Piston drop',
  summary: 'How far the piston is down from its top at any crank angle, pin in line or offset.',
  words: ['piston position', 'stroke and rod', 'slider-crank', 'pin offset', 'top dead centre', 'deck drop'],
  input,
  output,
  equation: 'D = √((l + a)² − e²) − a·cosθ − √(l² − (a·sinθ − e)²), a = stroke/2',
  tex: 'D = \\sqrt{(l+a)^2 - e^2} - a\\cos\\theta - \\sqrt{l^2 - (a\\sin\\theta - e)^2}, \\qquad a = \\tfrac{1}{2}\\,\\mathrm{stroke}',
  source:
    'J. B. Heywood, Internal Combustion Engine Fundamentals (1988), equations 2.4 and 2.5; pin offset derived here',
  validity:
    'rigid parts, the crank’s axis on the line of the bore; no piston rock, rod stretch or bearing slack',
  assumptions: (given) => [
    'rigid parts, no piston rock and no bearing slack',
    ...(given.pinOffset === undefined ? ['no pin offset: the pin stands on the line of the bore'] : []),
  ],
  cautions: () => [turningCaution],
  example: {
    inputs: {
      stroke: { value: 3.48, unit: 'in' },
      rodLength: { value: 5.7, unit: 'in' },
      crankAngles: [
        { value: 0, unit: 'deg' },
        { value: 90, unit: 'deg' },
        { value: 180, unit: 'deg' },
      ],
      from: 'true-tdc',
    },
    result: {
      drops: [
        { value: 0, unit: 'in' },
        { value: 2.012072218608652, unit: 'in' },
        { value: 3.48, unit: 'in' },
      ],
      tdcAt: { value: 0, unit: 'deg' },
      bdcAt: { value: 180, unit: 'deg' },
      actualStroke: { value: 3.48, unit: 'in' },
    },
  },
  headline: () => ['actualStroke'],
  compute: pistonDrops,
});
