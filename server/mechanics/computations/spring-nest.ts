import { z } from 'zod';
import { listOf } from '../../../shared/schemas/fields.ts';
import { out, outList, outNumber } from '../../../shared/schemas/outputs.ts';
import { length, rate } from '../../../shared/schemas/quantity-fields.ts';
import { defineComputation } from '../kit/computation.ts';
import { everyFault } from '../kit/every-fault.ts';
import { defaultLimit } from '../kit/limits.ts';
import { judged, verdictInputs, verdictOutputs } from '../kit/verdict.ts';
import { coilsTouch, makerFirst, springCaution } from '../springs/caution.ts';
import { firstSolid, loadAt, refuseImpossibleSprings } from '../springs/nest.ts';
import { openHeightOf } from '../springs/spring-heights.ts';

const input = z.strictObject({
  springs: listOf(
    z.strictObject({
      rate: rate('load this spring gains for each unit it is pressed'),
      freeLength: length('length of this spring when nothing presses it'),
      solidHeight: length('height of this spring with all its coils touching'),
    }),
    'the springs of the nest, outer first or as you like',
  ),
  installedHeight: length('height of the nest with the valve on its seat'),
  netLift: length('lift of the valve off its seat', { below: 'impossible-input' }),
  ...verdictInputs,
});

const output = z.object({
  seatLoad: out('load', 'load of all the springs with the valve on its seat'),
  openLoad: out('load', 'load of all the springs at full lift'),
  loads: outList(
    z.object({
      seatLoad: out('load', 'load of this spring with the valve on its seat'),
      openLoad: out('load', 'load of this spring at full lift'),
    }),
    'each spring, in the order given',
  ),
  ...verdictOutputs,
  limiting: outNumber('which spring goes solid first, counted from 0'),
});

const total = (loads: readonly number[]) => loads.reduce((sum, each) => sum + each, 0);

/**
 * Seat and open load of springs that stand one inside the other, and the room before the first goes solid.
 *
 * Equation: F = Σ kᵢ·max(0, freeLengthᵢ − height); margin = installedHeight − netLift − max solidHeightᵢ
 *
 * @param springs [N/m, m] each with `rate` (above zero), `freeLength` (above zero) and `solidHeight` (above zero,
 * to the free length and the installed height); 1 to 2000
 * @param installedHeight [m] height of the nest with the valve on its seat, above zero
 * @param netLift [m] lift of the valve off its seat, above zero
 * @param limit [m] least room before coil bind; left out, the default of the limits table
 * @param uncertainty [m] half-width of the margin's 95 % interval; left out, zero
 * @returns seatLoad [N], openLoad [N], loads ([N], each spring), margin [m] (negative: coils touch first),
 * limit [m], verdict [1], limiting [1] (index of the spring that goes solid first)
 * @throws impossible-input when a solid height is above the installed height or above its own free length
 * @throws impossible-input when the lift takes up the whole installed height, or is at or below zero
 *
 * Validity: linear springs on one seat under one retainer, no steps between them, no friction between coils.
 * Source: springs in parallel, J. E. Shigley, Mechanical Engineering Design, 9th ed. (2011), section 10-1; nested springs
 * of unequal length as in V. B. Bhandari, Design of Machine Elements, example 10.19.
 */
function springNest(given: z.output<typeof input>): z.output<typeof output> {
  const { springs, installedHeight, netLift } = given;
  everyFault(
    () => refuseImpossibleSprings(springs, installedHeight),
    () => openHeightOf(installedHeight, netLift),
  );
  const openHeight = openHeightOf(installedHeight, netLift);
  const loads = springs.map((spring) => ({
    seatLoad: loadAt(spring, installedHeight),
    openLoad: loadAt(spring, openHeight),
  }));
  const { index, solidHeight } = firstSolid(springs);
  return {
    seatLoad: total(loads.map((each) => each.seatLoad)),
    openLoad: total(loads.map((each) => each.openLoad)),
    loads,
    ...judged(openHeight - solidHeight, given, defaultLimit('coil-bind')),
    limiting: index,
  };
}

function looseSprings({ loads }: z.output<typeof output>): readonly string[] {
  const loose = loads.flatMap(({ seatLoad }, index) => (seatLoad > 0 ? [] : [index + 1]));
  if (loose.length === 0) return [];
  return [
    `Spring ${loose.join(', ')} of the list stands loose with the valve on its seat and carries nothing there: it can rattle and turn.`,
  ];
}

const newtons = (value: number) => ({ value: value / 4.4482216152605, unit: 'lbf' });

export const computation = defineComputation({
  name: 'spring-nest',
  title: 'Nested springs',
  summary: 'Seat and open load of a spring nest, and which spring goes solid first.',
  words: ['dual spring', 'triple spring', 'inner spring', 'damper', 'coil bind', 'open load', 'seat load'],
  input,
  output,
  equation:
    'load = sum of rate × (free length − height); margin = installed height − net lift − tallest solid height',
  tex: 'F(H) = \\sum_i k_i \\max(0, L_i - H), \\qquad m = H_\\mathrm{installed} - h - \\max_i H_{s,i}',
  source:
    'springs in parallel, J. E. Shigley, Mechanical Engineering Design, 9th ed. (2011), section 10-1; V. B. Bhandari, Design of Machine Elements, example 10.19',
  validity: 'linear springs on one seat under one retainer, without steps or friction',
  assumptions: (given) => [
    'all springs stand on one seat under one retainer: a step between them is not counted',
    'no friction between the coils, no damper',
    ...(given.limit === undefined
      ? ['the default limit for coil bind, common practice, no published source']
      : []),
    ...(given.uncertainty === undefined ? ['heights and lift taken as exact'] : []),
  ],
  cautions: (_given, result) => [
    ...looseSprings(result),
    ...(result.margin < 0 ? [coilsTouch] : []),
    springCaution,
    makerFirst,
  ],
  example: {
    inputs: {
      springs: [
        {
          rate: { value: 28.253472, unit: 'N/mm' },
          freeLength: { value: 100, unit: 'mm' },
          solidHeight: { value: 60, unit: 'mm' },
        },
        {
          rate: { value: 29.4307, unit: 'N/mm' },
          freeLength: { value: 85, unit: 'mm' },
          solidHeight: { value: 45, unit: 'mm' },
        },
      ],
      installedHeight: { value: 75, unit: 'mm' },
      netLift: { value: 10, unit: 'mm' },
    },
    result: {
      // Pressed by 25 and 10 mm on the seat, by 35 and 20 mm at full lift.
      seatLoad: newtons(28.253472 * 25 + 29.4307 * 10),
      openLoad: newtons(28.253472 * 35 + 29.4307 * 20),
      loads: [
        { seatLoad: newtons(28.253472 * 25), openLoad: newtons(28.253472 * 35) },
        { seatLoad: newtons(29.4307 * 10), openLoad: newtons(29.4307 * 20) },
      ],
      margin: { value: 5 / 25.4, unit: 'in' },
      limit: { value: 0.06, unit: 'in' },
      verdict: 'clear',
      limiting: 0,
    },
  },
  compute: springNest,
});
