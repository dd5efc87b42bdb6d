import { z } from 'zod';
import { defined } from '../../../shared/defined.ts';
import { impossible } from '../../../shared/problems/faults.ts';
import { CAN_BE } from '../../../shared/schemas/can-be.ts';
import { choice } from '../../../shared/schemas/fields.ts';
import { ratio, threadTurns } from '../../../shared/schemas/number-fields.ts';
import { out, outWord } from '../../../shared/schemas/outputs.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { evenIfFaulty, notBeside } from '../../../shared/schemas/two-forms.ts';
import { turningCaution } from '../cam/caution.ts';
import { defineComputation } from '../kit/computation.ts';
import { everyFault } from '../kit/every-fault.ts';
import { EQUAL } from '../kit/nearest.ts';
import { saidLength } from '../kit/said.ts';
import { checkPlunger, farCautions } from '../setting/far-turned.ts';
import { PLUNGERS, USUAL_PRELOADS } from '../setting/setting-table.ts';
import { bledFirst, simpleRule, ZERO_FOUND_BY, zeroCautions } from '../setting/words.ts';
import { makerFirst } from '../springs/caution.ts';
import { ADJUSTER_MOUNTS } from '../threads/adjuster-screw.ts';
import { adjusterThreadField } from '../threads/designation-field.ts';
import { computation as adjuster } from './adjuster.ts';

const input = z
  .strictObject({
    turns: threadTurns('turns of the nut or screw past zero lash, tightening', { least: 0 }),
    thread: adjusterThreadField(
      'thread of the stud, or of the adjusting screw; or its pitch alone, as 0.75 mm or 32 tpi',
    ),
    mount: choice(ADJUSTER_MOUNTS, 'nut on the stud, screw at the pushrod cup, or screw at the valve'),
    ratio: ratio('rocker ratio, valve over lobe'),
    zeroFoundBy: choice(ZERO_FOUND_BY, 'how zero lash was found').optional(),
    liftersTravel: length('how far the lifter’s plunger can go, from its clip to its bottom', {
      canBe: CAN_BE.plungerTravel,
    }).optional(),
    plunger: choice(
      PLUNGERS,
      'which usual band it is set against, where none is wanted; left out, that of a usual lifter',
    ).optional(),
    wanted: z
      .strictObject({
        from: length('the least preload that is wanted', { sign: 'not-negative', canBe: CAN_BE.preload }),
        to: length('the most preload that is wanted', { sign: 'not-negative', canBe: CAN_BE.preload }),
      })
      .meta({ description: 'preload that is wanted; left out, the usual band' })
      .optional(),
  })
  .superRefine(notBeside('plunger', 'wanted'), evenIfFaulty);

const output = z.object({
  preload: out('length', 'how far the lifter’s plunger is pressed down'),
  inBand: outWord(['within', 'under', 'over'], 'preload against the band wanted; its ends count as within'),
  left: out(
    'length',
    'travel that the plunger has left to its bottom; negative by as much as it would have to go past it',
  ).optional(),
});

type Given = z.output<typeof input>;
type Result = z.output<typeof output>;

function checkBand({ wanted, liftersTravel }: Given): void {
  if (wanted === undefined) return;
  everyFault(
    () => {
      if (wanted.from > wanted.to + EQUAL)
        impossible(['wanted/from', 'wanted/to'], 'the band must not begin above where it ends');
    },
    () => {
      if (liftersTravel !== undefined && wanted.to > liftersTravel + EQUAL)
        impossible(['wanted/to', 'liftersTravel'], 'a plunger can’t be pressed further than it goes');
    },
  );
}

const usualOf = ({ plunger = 'usual' }: Given) => USUAL_PRELOADS[plunger];

/** A plunger at its bottom is pressed too far, whatever the usual band says. */
function inBand(preload: number, given: Given) {
  const { from, to } = given.wanted ?? usualOf(given);
  const { liftersTravel } = given;
  if (preload > Math.min(to, liftersTravel ?? to) + EQUAL) return 'over';
  return preload < from - EQUAL ? 'under' : 'within';
}

/**
 * The preload that turns past zero lash give a hydraulic lifter, against the band wanted and the plunger’s travel.
 *
 * Equation: preload = seatMovement of `adjuster` with a hydraulic lifter: turns·P·(1 + 1/r) for a nut on the stud,
 * turns·P for a screw at the cup, turns·P/r for one at the valve; left = liftersTravel − preload
 *
 * @param turns [1] past zero lash, tightening, not negative: before zero lash there is a gap and no preload
 * @param thread [1] designation of the thread, or its pitch alone; the pitch P [m] is the travel per turn
 * @param mount [1] `stud-nut`, `cup-screw` or `valve-end-screw`
 * @param ratio [1] rocker ratio r, valve over lobe, above zero
 * @param zeroFoundBy [1] `up-and-down`, `spin` or `feeler`: what zero is cautioned of; left out, nothing
 * @param liftersTravel [m] whole travel of the plunger, above zero; left out, what is left is not told
 * @param plunger [1] `usual` or `short-travel`: the usual band it is set against; left out, `usual`
 * @param wanted [m] band `from` and `to`, neither negative; left out, the usual band of the table; not beside `plunger`
 * @returns preload [m] at the plunger, inBand [1] (`within`, the ends of the band included, `under`, `over`: past the
 * band, or past the travel), left [m] (only with liftersTravel; negative where the plunger meets its bottom first)
 * @throws impossible-input when the band begins above its end, or goes past the plunger’s travel
 *
 * Validity: as `adjuster`: arms nearly in line, small turns; valve closed, lifter on the base circle. Past the bottom the
 * plunger stands and the valve is opened instead.
 * Source: derived here; travel per turn by ASME B1.1 and ISO 965-2; the usual band by trade press.
 */
function lifterPreload(given: Given): Result {
  checkBand(given);
  const { turns: turned, thread, mount, ratio: rockerRatio, liftersTravel } = given;
  const { seatMovement: preload = 0 } = adjuster.compute({
    turns: turned,
    thread,
    mount,
    ratio: rockerRatio,
    lifter: 'hydraulic',
  });
  return {
    preload,
    inBand: inBand(preload, given),
    ...defined({ left: liftersTravel === undefined ? undefined : liftersTravel - preload }),
  };
}

function ofTravel(given: Given, { left }: Result): string[] {
  const { ratio: rockerRatio, liftersTravel, wanted } = given;
  const { to } = usualOf(given);
  if (liftersTravel === undefined || left === undefined) return [];
  const short = wanted === undefined && to > liftersTravel;
  return [
    ...(short
      ? [
          `The usual band goes to ${saidLength(to)}, past this lifter’s travel of ${saidLength(liftersTravel)}: ask its maker for the band.`,
        ]
      : []),
    ...(left > EQUAL
      ? []
      : [
          `The plunger meets its bottom${left < -EQUAL ? ` ${saidLength(-left)} before these turns are done, and the valve is then held off its seat by up to ${saidLength(-left * rockerRatio)}` : ' with these turns: nothing is left for wear or heat'}. Back off before the engine is turned.`,
        ]),
  ];
}

/** A plunger that pumps up takes back all it was pressed down, and the lever makes more of it at the valve. */
const pumpUp = (rockerRatio: number, preload: number): string =>
  preload <= EQUAL
    ? 'At zero lash the plunger stands against its clip: it gets noisy as parts wear, and the clip carries the force of the oil.'
    : `Pump-up: a plunger that rises to its clip takes this preload back and opens the valve further by up to ${saidLength(preload * rockerRatio)}. Piston-to-valve room must have that to give.`;

const bandSaid = ({ from, to, source }: (typeof USUAL_PRELOADS)['usual']): string =>
  `${from === 0 ? '0' : saidLength(from)} to ${saidLength(to)}: ${source}`;

/** Which band it was set against, where none was wanted. */
function ofBand({ wanted, plunger }: Given): string[] {
  if (wanted !== undefined) return [];
  const short = bandSaid(USUAL_PRELOADS['short-travel']);
  if (plunger === 'short-travel') return [`the usual band of a short-travel lifter, ${short}`];
  return [
    `the usual band of ${bandSaid(USUAL_PRELOADS.usual)}`,
    ...(plunger === undefined ? [`one of short travel is set to ${short}: say so if it is one`] : []),
  ];
}

export const computation = defineComputation({
  name: 'lifter-preload',
  title: 'Preload of a hydraulic lifter',
  summary:
    'What turns past zero lash press a lifter’s plunger down, and how that stands in its band and travel.',
  words: ['preload', 'hydraulic lifter', 'plunger', 'pump-up', 'turns past zero', 'travel', 'bottomed'],
  input,
  output,
  equation:
    'preload = turns × pitch × (1 + 1/ratio) for a nut on the stud, × 1 for a screw at the cup, × 1/ratio for one at the valve; left = travel − preload',
  tex: 's = n P\\,\\left(1+\\tfrac1r\\right)\\;\\text{(stud)}, \\quad n P\\;\\text{(cup)}, \\quad \\tfrac{n P}{r}\\;\\text{(valve end)}, \\qquad s_\\mathrm{left} = s_\\mathrm{travel} - s',
  source:
    'derived here, by the lever about the valve tip; travel per turn by ASME B1.1 and ISO 965-2; the usual band by trade press',
  validity:
    'arms nearly in line, valve closed, lifter on the base circle; within 1 % of the full geometry of usual rockers',
  assumptions: (given) => [
    'turns are counted from zero lash, found by up-and-down play with the lifter bled down',
    'tip, pivot and cup nearly in line; the full geometry of usual rockers differs by up to 1 %',
    ...ofBand(given),
  ],
  cautions: (given, result) => [
    ...zeroCautions(given.zeroFoundBy, 'hydraulic'),
    ...ofTravel(given, result),
    ...farCautions(result.preload, given.liftersTravel),
    bledFirst,
    pumpUp(given.ratio, Math.min(result.preload, given.liftersTravel ?? result.preload)),
    ...(given.mount === 'stud-nut' ? [simpleRule] : []),
    'Turn by quarters and let the lifter bleed where piston-to-valve room is small.',
    turningCaution,
    makerFirst,
  ],
  example: {
    inputs: {
      turns: 0.5,
      thread: '7/16-20',
      mount: 'stud-nut',
      ratio: 1.5,
      liftersTravel: { value: 0.12, unit: 'in' },
    },
    result: {
      preload: { value: 0.125 / 3, unit: 'in' },
      inBand: 'within',
      left: { value: 0.12 - 0.125 / 3, unit: 'in' },
    },
  },
  ofEngine: ({ turns: counted }, { preload }) => checkPlunger(counted, preload),
  headline: () => ['preload'],
  compute: lifterPreload,
});
