import { z } from 'zod';
import { impossible } from '../../../shared/problems/faults.ts';
import { choice } from '../../../shared/schemas/fields.ts';
import { turns } from '../../../shared/schemas/number-fields.ts';
import { out } from '../../../shared/schemas/outputs.ts';
import { length, quantity } from '../../../shared/schemas/quantity-fields.ts';
import { defineComputation } from '../kit/computation.ts';
import { everyFault } from '../kit/every-fault.ts';
import { makerFirst } from '../springs/caution.ts';
import {
  coilRemark,
  naturalFrequencyOf,
  SPRING_ENDS,
  solidHeightOf,
  springRate,
} from '../springs/helical-spring.ts';

const input = z.strictObject({
  wire: length('diameter of the wire'),
  meanDiameter: length('mean diameter of the coils: outside diameter less one wire'),
  activeCoils: turns('coils that work', { above: 0 }),
  totalCoils: turns('all coils, those at the ends too', { above: 0 }),
  ends: choice(SPRING_ENDS, 'how the ends are finished'),
  shearModulus: quantity('pressure', 'shear modulus of the wire, such as 11.2e6 psi for valve-spring wire'),
  density: quantity('density', 'density of the wire, such as .284 lb/in3 for steel'),
});

const WIRE = ['wire', 'meanDiameter'];
const COILS = ['activeCoils', 'totalCoils'];

const output = z.object({
  rate: out('rate', 'load gained for each unit it is pressed'),
  solidHeight: out('length', 'height with all coils touching'),
  naturalFrequency: out('frequency', 'lowest natural frequency with both ends seated'),
});

/**
 * Rate, solid height and natural frequency of a helical spring from its wire and coils.
 *
 * Equation: k = G·d⁴/(8·D³·Na); solidHeight = d·Nt (ground) or d·(Nt + 1) (not ground);
 * f = d/(2π·D²·Na)·√(G/(2ρ))
 *
 * @param wire [m] wire diameter d, above zero, below the mean diameter
 * @param meanDiameter [m] mean diameter of the coils D, above zero
 * @param activeCoils [1] Na, above zero, to the total
 * @param totalCoils [1] Nt, above zero
 * @param ends [1] `plain`, `plain-ground`, `squared` or `squared-ground`
 * @param shearModulus [Pa] G, above zero
 * @param density [kg/m³] mass density ρ of the wire, above zero
 * @returns rate [N/m], solidHeight [m], naturalFrequency [Hz]
 * @throws impossible-input when the wire is as thick as the coils' mean diameter or thicker
 * @throws impossible-input when more coils are active than there are
 *
 * Validity: a cylindrical spring of round wire in its linear range; both ends seated for the frequency.
 * Source: J. E. Shigley, Mechanical Engineering Design, 9th ed. (2011), sections 10-3 and 10-8, table 10-1.
 */
function springFromWire(spring: z.output<typeof input>): z.output<typeof output> {
  everyFault(
    () => spring.wire < spring.meanDiameter || impossible(WIRE, 'the wire is as thick as the coils are wide'),
    () =>
      spring.activeCoils <= spring.totalCoils || impossible(COILS, 'more coils are active than there are'),
  );
  return {
    rate: springRate(spring),
    solidHeight: solidHeightOf(spring),
    naturalFrequency: naturalFrequencyOf(spring),
  };
}

export const computation = defineComputation({
  name: 'spring-from-wire',
  title: 'Spring from its wire',
  summary: 'Rate, solid height and natural frequency of a spring from wire, coils and ends.',
  words: [
    'wire diameter',
    'coil diameter',
    'spring rate',
    'surge',
    'natural frequency',
    'coils',
    'shear modulus',
  ],
  input,
  output,
  equation:
    'k = G·d⁴/(8·D³·Na); solid height = d·Nt (ground) or d·(Nt + 1) (not ground); f = d/(2π·D²·Na)·√(G/(2ρ))',
  tex: 'k = \\frac{G d^4}{8 D^3 N_a}, \\qquad H_s = d\\,N_t \\;\\text{or}\\; d\\,(N_t+1), \\qquad f = \\frac{d}{2\\pi D^2 N_a}\\sqrt{\\frac{G}{2\\rho}}',
  source: 'J. E. Shigley, Mechanical Engineering Design, 9th ed. (2011), sections 10-3 and 10-8, table 10-1',
  validity: 'a cylindrical spring of round wire in its linear range, both ends seated for the frequency',
  assumptions: (given) => [
    'round wire, coils of one diameter, constant pitch: not a beehive or conical spring',
    'both ends seated, and no damper, for the natural frequency',
    ...coilRemark(given),
  ],
  cautions: () => [makerFirst],
  example: {
    inputs: {
      wire: { value: 2.5, unit: 'mm' },
      meanDiameter: { value: 28.5, unit: 'mm' },
      activeCoils: 13,
      totalCoils: 14,
      ends: 'plain-ground',
      shearModulus: { value: 81, unit: 'GPa' },
      density: { value: 7850, unit: 'kg/m3' },
    },
    result: {
      rate: { value: 7.504546185194432, unit: 'lbf/in' },
      solidHeight: { value: 35 / 25.4, unit: 'in' },
      naturalFrequency: { value: 85.58935454118942, unit: 'Hz' },
    },
  },
  headline: () => ['rate'],
  compute: springFromWire,
});
