import { z } from 'zod';
import { type InputFault, InputFaults, impossible } from '../../../shared/problems/faults.ts';
import { choice } from '../../../shared/schemas/fields.ts';
import { turns } from '../../../shared/schemas/number-fields.ts';
import { out } from '../../../shared/schemas/outputs.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { needleAngle, travelled } from '../indicator/dial.ts';
import { defineComputation } from '../kit/computation.ts';
import { IN } from '../kit/si.ts';

const wholeTurns = (description: string) => turns(description, { least: 0, whole: true });
const needle = length('how far the hand stands past the turn, in the direction it runs', {
  sign: 'not-negative',
});

const input = z.strictObject({
  graduation: length('smallest division of the dial'),
  perTurn: length('travel of the plunger per turn of the big hand'),
  turns: wholeTurns('whole turns, from the small hand'),
  needle,
  runs: choice(
    ['clockwise', 'anticlockwise'],
    'which way the hand runs; left out, clockwise: the plunger goes in',
  ).optional(),
  start: z
    .strictObject({ turns: wholeTurns('whole turns at the start'), needle })
    .meta({ description: 'where the hand stood at the start; left out, zero' })
    .optional(),
  travel: length('travel the indicator has in all').optional(),
});

const output = z.object({
  reading: out('length', 'from the start to where the hand stands'),
  remainingTravel: out('length', 'travel left in the direction the hand runs').optional(),
  needleAngle: out('angle', 'where the hand stands on the face, clockwise from zero'),
});

type Input = z.output<typeof input>;

/** Everything about a hand that its own dial rules out, each fault at its field. */
function refuseImpossible({ graduation, perTurn, needle: hand, start }: Input): void {
  const faults: InputFault[] = [];
  const refuse = (pointer: string, detail: string) =>
    faults.push({ pointer, code: 'impossible-input', detail });
  const turnEnds = perTurn * (1 - 1e-12);
  if (graduation > perTurn * (1 + 1e-12)) refuse('/graduation', 'is more than a whole turn of the hand');
  if (hand >= turnEnds) refuse('/needle', 'must be less than a turn: count it as one more turn');
  if (start !== undefined && start.needle >= turnEnds) {
    refuse('/start/needle', 'must be less than a turn: count it as one more turn');
  }
  if (faults.length > 0) throw new InputFaults(faults);
}

/**
 * Reading of a dial indicator from its turns and hand, and where that hand stands on the face.
 *
 * Equation: reading = (turns · perTurn + needle) − (start.turns · perTurn + start.needle);
 * remainingTravel = travel − (turns · perTurn + needle)
 *
 * @param graduation [m] smallest division of the dial, above zero, at most perTurn
 * @param perTurn [m] travel per turn of the big hand, above zero
 * @param turns [1] whole turns from the small hand, zero or more
 * @param needle [m] hand past the last turn in the direction it runs, not negative, under perTurn
 * @param runs [1] `clockwise` (plunger going in) or `anticlockwise`; left out, clockwise
 * @param start [1] where the hand stood at the start {turns [1], needle [m]}; left out, zero
 * @param travel [m] travel the indicator has in all, counted from zero turns; may be left out
 * @returns reading [m], remainingTravel [m] (left out without travel), needleAngle [rad] clockwise from zero
 * @throws impossible-input when a needle is a whole turn or more
 * @throws impossible-input when the graduation is more than a turn
 * @throws impossible-input when the start lies past the reading
 * @throws impossible-input when turns and needle are more than the travel
 * @throws impossible-input when turns and needle come to more than 100 in
 *
 * Validity: the turns counted right; the dial's own errors are not in it.
 * Source: common practice, no published source; at the valve the hand runs backwards and the clockwise figures show
 * the complement (trade practice, 2.1).
 */
function dialReading(given: Input): z.output<typeof output> {
  refuseImpossible(given);
  const { perTurn, start, travel, runs = 'clockwise' } = given;
  const position = travelled(given, perTurn);
  const from = start === undefined ? 0 : travelled(start, perTurn);
  // A rounding of the units is no movement backwards.
  const slack = 1e-12 * (position + from);
  if (from > position + slack) impossible(['start'], 'lies past the reading in the direction the hand runs');
  if (position > 100 * IN) impossible(['turns'], 'with this dial give more than any indicator has');
  if (travel !== undefined && position > travel + slack) {
    impossible(['turns', 'travel'], 'turns and needle give more than the travel of the indicator');
  }
  return {
    reading: Math.max(0, position - from),
    ...(travel === undefined ? {} : { remainingTravel: Math.max(0, travel - position) }),
    needleAngle: needleAngle({ perTurn, runs }, given.needle),
  };
}

const inch = (value: number) => ({ value, unit: 'in' });

export const computation = defineComputation({
  name: 'dial-reading',
  title: 'Dial reading',
  summary: 'Reading from turns and hand of a dial indicator, where the hand stands, and the travel left.',
  words: [
    'dial indicator',
    'turns and needle',
    'small hand',
    'runs backwards',
    'count the turns',
    'plunger travel',
  ],
  input,
  output,
  equation:
    'reading = (turns × travel per turn + needle) − start; travel left = travel − (turns × travel per turn + needle)',
  tex: 'x=(N\\,p+n)-(N_0\\,p+n_0),\\qquad \\theta_\\circlearrowright=\\frac{n}{p}\\,360^\\circ,\\quad \\theta_\\circlearrowleft=360^\\circ-\\frac{n}{p}\\,360^\\circ',
  source: 'common practice, no published source',
  validity: 'the turns counted right; errors of the dial itself not in it',
  assumptions: ({ runs, start, travel }) => [
    'the turns were counted by the small hand',
    ...(runs === undefined ? ['the hand runs clockwise: the plunger goes in'] : []),
    ...(start === undefined ? ['the hand stood on zero at the start'] : []),
    ...(travel === undefined ? [] : ['the travel counts from zero turns']),
  ],
  cautions: ({ travel, perTurn, runs }, { remainingTravel }) => [
    ...(travel !== undefined && remainingTravel !== undefined && remainingTravel < perTurn / 2
      ? [
          `Hardly any travel is left: push the plunger in ${runs === 'anticlockwise' ? 'further' : 'less'} before zeroing and read again, or the reading may stop short.`,
        ]
      : []),
  ],
  example: {
    inputs: {
      graduation: inch(0.001),
      perTurn: inch(0.1),
      turns: 4,
      needle: inch(0.082),
      runs: 'anticlockwise',
      travel: inch(1),
    },
    result: {
      reading: inch(0.482),
      remainingTravel: inch(0.518),
      needleAngle: { value: 64.8, unit: 'deg' },
    },
  },
  headline: () => ['reading'],
  compute: dialReading,
});
