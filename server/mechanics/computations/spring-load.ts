import { z } from 'zod';
import { out } from '../../../shared/schemas/outputs.ts';
import { length, load, rate } from '../../../shared/schemas/quantity-fields.ts';
import { defineComputation } from '../kit/computation.ts';
import { everyFault } from '../kit/every-fault.ts';
import { defaultLimit } from '../kit/limits.ts';
import { judged, verdictInputs, verdictOutputs } from '../kit/verdict.ts';
import { coilsTouch, makerFirst, springCaution } from '../springs/caution.ts';
import { coilsMeet, openHeightOf, refuseSolidAbove } from '../springs/spring-heights.ts';

const input = z.strictObject({
  installedHeight: length('height of the spring with the valve on its seat'),
  seatLoad: load('load of the spring at its installed height'),
  rate: rate('load the spring gains for each unit it is pressed further'),
  netLift: length('lift of the valve off its seat', { below: 'impossible-input' }),
  solidHeight: length('height with all coils touching'),
  ...verdictInputs,
});

const output = z.object({
  openHeight: out('length', 'height of the spring at full lift'),
  openLoad: out('load', 'load of the spring at full lift'),
  ...verdictOutputs,
});

/**
 * Load of a valve spring at full lift, and the room left before its coils touch.
 *
 * Equation: openHeight = installedHeight − netLift; openLoad = seatLoad + rate · netLift;
 * margin = openHeight − solidHeight
 *
 * @param installedHeight [m] height with the valve on its seat, above zero
 * @param seatLoad [N] load at the installed height, not negative
 * @param rate [N/m] above zero
 * @param netLift [m] lift of the valve off its seat, above zero
 * @param solidHeight [m] height with all coils touching, to the installed height
 * @param limit [m] least room before coil bind; left out, the default of the limits table
 * @param uncertainty [m] half-width of the margin's 95 % interval; left out, zero
 * @returns openHeight [m], openLoad [N], margin [m] (negative: the coils touch first), limit [m], verdict [1]
 * @throws impossible-input when the solid height is above the installed height
 * @throws impossible-input when the lift takes up the whole installed height, or is at or below zero
 *
 * Validity: a spring of constant rate; not a beehive or conical one beyond the range its rate was taken over.
 * Source: linear spring, J. E. Shigley, Mechanical Engineering Design, 9th ed. (2011), section 10-1; the heights are
 * common practice, no published source.
 */
function springLoad(given: z.output<typeof input>): z.output<typeof output> {
  const { installedHeight, seatLoad, rate: perLength, netLift, solidHeight } = given;
  everyFault(
    () => refuseSolidAbove(solidHeight, installedHeight, ['solidHeight', 'installedHeight']),
    () => openHeightOf(installedHeight, netLift),
  );
  const openHeight = openHeightOf(installedHeight, netLift);
  return {
    openHeight,
    openLoad: seatLoad + perLength * netLift,
    ...judged(openHeight - solidHeight, given, defaultLimit('coil-bind')),
  };
}

export const computation = defineComputation({
  name: 'spring-load',
  title: 'Spring load and coil bind',
  summary: 'Open load of a valve spring, and the room left before its coils touch.',
  words: [
    'coil bind',
    'open load',
    'seat load',
    'installed height',
    'spring rate',
    'spring pressure',
    'solid height',
  ],
  input,
  output,
  equation: 'open load = seat load + rate × net lift; margin = installed height − net lift − solid height',
  tex: 'F_\\mathrm{open} = F_\\mathrm{seat} + k\\,h, \\qquad m = H_\\mathrm{installed} - h - H_\\mathrm{solid}',
  source:
    'linear spring, J. E. Shigley, Mechanical Engineering Design, 9th ed. (2011), section 10-1; heights by common practice, no published source',
  validity: 'a spring of constant rate; the valve moves the retainer by its net lift',
  assumptions: (given) => [
    'the rate stays the same from installed to open height',
    ...(given.limit === undefined
      ? ['the default limit for coil bind, common practice, no published source']
      : []),
    ...(given.uncertainty === undefined ? ['heights and lift taken as exact'] : []),
  ],
  cautions: (_given, { margin }) => [...(coilsMeet(margin) ? [coilsTouch] : []), springCaution, makerFirst],
  example: {
    inputs: {
      installedHeight: { value: 1.9, unit: 'in' },
      seatLoad: { value: 130, unit: 'lbf' },
      rate: { value: 350, unit: 'lbf/in' },
      netLift: { value: 0.56, unit: 'in' },
      solidHeight: { value: 1.15, unit: 'in' },
    },
    result: {
      openHeight: { value: 1.34, unit: 'in' },
      openLoad: { value: 326, unit: 'lbf' },
      margin: { value: 0.19, unit: 'in' },
      limit: { value: 0.06, unit: 'in' },
      verdict: 'clear',
    },
  },
  headline: () => ['margin', 'openLoad'],
  compute: springLoad,
});
