import { z } from 'zod';
import { impossible } from '../../../shared/problems/faults.ts';
import { out } from '../../../shared/schemas/outputs.ts';
import { angles } from '../../../shared/schemas/quantity-lists.ts';
import { turningCaution } from '../cam/caution.ts';
import { defineComputation } from '../kit/computation.ts';

const TURN = 2 * Math.PI;

const input = z.strictObject({
  stopReadings: angles(
    'the two wheel readings at the stop, each counted from the pointer’s zero on its own side; first the one after TDC',
    {
      sign: 'positive',
      least: 2,
      most: 2,
    },
  ),
});

const output = z.object({
  trueReading: out('angle', 'what each side should read once the pointer stands right'),
  correction: out(
    'angle',
    'how far the pointer is out where it is left: above zero the wheel reads so much too much after TDC, below zero so much too little',
  ),
});

/**
 * True top dead centre from two contacts with a positive stop, one each way.
 *
 * Equation: trueReading = (first + second)/2; correction = first − trueReading
 *
 * @param stopReadings [rad] the reading after TDC, then the one before it, each from the pointer's zero on its own
 * side, both positive
 * @returns trueReading [rad], correction [rad] (positive: it reads so much too much after TDC)
 * @throws impossible-input when the two readings together make a whole turn or more
 *
 * Validity: the stop does not move between the contacts; the piston's travel is even about its top.
 * Source: common practice, no published source; the mean of the two contacts is the top by symmetry.
 */
function topDeadCentre({ stopReadings }: z.output<typeof input>): z.output<typeof output> {
  const [first = 0, second = 0] = stopReadings;
  if (first + second >= TURN) {
    impossible(
      ['stopReadings/0', 'stopReadings/1'],
      'the two readings together make a whole turn: the crank could not have turned from one to the other',
    );
  }
  const trueReading = (first + second) / 2;
  return { trueReading, correction: first - trueReading };
}

export const computation = defineComputation({
  name: 'top-dead-centre',
  title: 'Top dead centre',
  summary: 'Where the pointer should stand, from two readings at a positive stop.',
  words: ['TDC', 'positive stop', 'piston stop', 'degree wheel', 'pointer', 'degreeing'],
  input,
  output,
  equation: 'trueReading = (first + second)/2; correction = first − trueReading',
  tex: '\\theta = \\frac{\\theta_1+\\theta_2}{2}, \\qquad \\Delta = \\theta_1 - \\theta = \\frac{\\theta_1-\\theta_2}{2}',
  source:
    'common practice, no published source; worked figures 36.75 and 35.25 from a printed degreeing text',
  validity:
    'the stop stays where it is between the two contacts; a pin offset of .060 in shifts the answer by about .02°',
  assumptions: () => [
    'the stop did not move between the two contacts',
    'the piston’s travel is even about its top: no pin offset taken in',
  ],
  cautions: () => [
    turningCaution,
    'Never turn the engine with the starter while the stop is in; take the stop out before anything else.',
  ],
  example: {
    inputs: {
      stopReadings: [
        { value: 36.75, unit: 'deg' },
        { value: 35.25, unit: 'deg' },
      ],
    },
    result: { trueReading: { value: 36, unit: 'deg' }, correction: { value: 0.75, unit: 'deg' } },
  },
  headline: () => ['trueReading'],
  compute: topDeadCentre,
});
