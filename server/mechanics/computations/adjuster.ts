import { z } from 'zod';
import { impossible } from '../../../shared/problems/faults.ts';
import { choice } from '../../../shared/schemas/fields.ts';
import { ratio, turns } from '../../../shared/schemas/number-fields.ts';
import { out, outNumber } from '../../../shared/schemas/outputs.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { evenIfFaulty, oneOfTwoForms, twoFormsJsonSchema } from '../../../shared/schemas/two-forms.ts';
import { turningCaution } from '../cam/caution.ts';
import { defineComputation } from '../kit/computation.ts';
import { makerFirst } from '../springs/caution.ts';
import { ADJUSTER_MOUNTS, seatPerAdvance } from '../threads/adjuster-screw.ts';
import { threadField } from '../threads/designation-field.ts';

const input = z
  .strictObject({
    thread: threadField('thread of the stud, or of the adjusting screw'),
    turns: turns('turns of the nut or screw from zero lash, tightening positive').optional(),
    preload: length('how far the lifter’s plunger is to be pressed down', {
      sign: 'not-negative',
    }).optional(),
    ratio: ratio('rocker ratio, valve over lobe'),
    mount: choice(ADJUSTER_MOUNTS, 'nut on the stud, screw at the pushrod cup, or screw at the valve'),
    lifter: choice(['hydraulic', 'solid'], 'a plunger that can be pressed down, or none'),
  })
  .superRefine(oneOfTwoForms(['turns'], ['preload']), evenIfFaulty)
  .meta(twoFormsJsonSchema(['turns'], ['preload']));

const output = z.object({
  seatMovement: out('length', 'how far the lifter’s plunger is pressed down; hydraulic lifters').optional(),
  lashChange: out(
    'length',
    'change of the gap at the valve tip, tightening negative; solid lifters',
  ).optional(),
  turns: outNumber('turns of the nut or screw, tightening positive'),
});

/**
 * What turns of an adjuster do: preload of a hydraulic lifter, or the change of lash with a solid one.
 *
 * Equation: seatMovement = turns·P·(1 + 1/r) for a nut on the stud, turns·P for a screw at the cup, turns·P/r for a
 * screw at the valve; lashChange = −r·turns·P·(1 + 1/r), −r·turns·P, −turns·P
 *
 * @param thread [1] designation of the thread; its pitch P [m] is the travel per turn
 * @param turns [1] from zero lash, tightening positive; instead of `preload`
 * @param preload [m] wanted travel of the plunger, not negative; instead of `turns`, hydraulic lifters alone
 * @param ratio [1] rocker ratio r, valve over lobe, above zero
 * @param mount [1] `stud-nut`, `cup-screw` or `valve-end-screw`
 * @param lifter [1] `hydraulic` or `solid`
 * @returns seatMovement [m] (hydraulic), lashChange [m] (solid, tightening negative), turns [1]
 * @throws not-allowed when the thread is not in the table, or turns and preload both come
 * @throws impossible-input when a preload is wanted of a solid lifter
 * @throws impossible-input when the preload would need more than 1000 turns
 *
 * Validity: arms nearly in line, small turns; valve closed, lifter on the base circle. Set against the full geometry of
 * usual rockers it is right within 1 %.
 * Source: derived here; travel per turn by ASME B1.1 and ISO 965-2.
 */
function adjuster(given: z.output<typeof input>): z.output<typeof output> {
  const { thread, preload, ratio: rockerRatio, mount, lifter } = given;
  if (lifter === 'solid' && preload !== undefined) {
    impossible(['preload', 'lifter'], 'a solid lifter has no plunger to press down');
  }
  const perTurn = thread.pitch * seatPerAdvance(mount, rockerRatio);
  const turned = given.turns ?? (preload ?? 0) / perTurn;
  if (turned > 1000) impossible(['preload'], 'needs more than 1000 turns of this thread');
  const travel = turned * perTurn;
  // Adding zero turns the −0 of no turn into 0.
  return lifter === 'hydraulic'
    ? { seatMovement: travel, turns: turned }
    : { lashChange: -rockerRatio * travel + 0, turns: turned };
}

const simpleRule =
  'A turn is often said to be one pitch of preload; that leaves out the lever of a nut on the stud, which presses the plunger 1 + 1/ratio times as far.';

export const computation = defineComputation({
  name: 'adjuster',
  title: 'Preload and lash by turns',
  summary: 'What turns of a stud nut or adjusting screw do to preload or lash.',
  words: [
    'preload',
    'lash',
    'adjusting nut',
    'locking nut',
    'adjuster screw',
    'quarter turn',
    'half turn',
    'zero lash',
    'valve adjustment',
  ],
  input,
  output,
  equation:
    'plunger travel = turns × pitch × (1 + 1/ratio) for a nut on the stud, × 1 for a screw at the cup, × 1/ratio for one at the valve; lash change = −ratio × that',
  tex: 's = n P\\,\\left(1+\\tfrac1r\\right)\\;\\text{(stud)}, \\quad n P\\;\\text{(cup)}, \\quad \\tfrac{n P}{r}\\;\\text{(valve end)}, \\qquad \\Delta g = -r\\,s',
  source: 'derived here, by the lever about the valve tip; travel per turn by ASME B1.1 and ISO 965-2',
  validity:
    'arms nearly in line, valve closed, lifter on the base circle; within 1 % of the full geometry of usual rockers',
  assumptions: ({ lifter }) => [
    lifter === 'hydraulic'
      ? 'turns are counted from zero lash, the valve stays closed and the plunger gives way'
      : 'the pushrod side stands still and the gap at the valve tip changes; a negative sum means that lash closes',
    'tip, pivot and cup nearly in line; the full geometry of usual rockers differs by up to 1 %',
    'a locking nut’s own take-up is not counted: check again once it is locked',
  ],
  cautions: ({ mount, lifter }) => [
    ...(mount === 'stud-nut' && lifter === 'hydraulic' ? [simpleRule] : []),
    ...(lifter === 'hydraulic'
      ? ['Turn by quarters and let the lifter bleed where piston-to-valve room is small.']
      : []),
    'Confirm with an indicator on the plunger or a gauge at the tip.',
    turningCaution,
    makerFirst,
  ],
  example: {
    inputs: { thread: '7/16-20', turns: 0.5, ratio: 1.5, mount: 'stud-nut', lifter: 'hydraulic' },
    result: { seatMovement: { value: 0.125 / 3, unit: 'in' }, turns: 0.5 },
  },
  compute: adjuster,
});
