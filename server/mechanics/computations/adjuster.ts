import { z } from 'zod';
import { defined } from '../../../shared/defined.ts';
import { impossible } from '../../../shared/problems/faults.ts';
import type { FieldRange } from '../../../shared/quantities/field-range.ts';
import { CAN_BE } from '../../../shared/schemas/can-be.ts';
import { choice } from '../../../shared/schemas/fields.ts';
import { ratio, threadTurns } from '../../../shared/schemas/number-fields.ts';
import { out, outNumber, outWord } from '../../../shared/schemas/outputs.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { evenIfFaulty, formsJsonSchema, oneOfForms } from '../../../shared/schemas/two-forms.ts';
import { turningCaution } from '../cam/caution.ts';
import { defineComputation } from '../kit/computation.ts';
import { EQUAL } from '../kit/nearest.ts';
import { checkGap, checkPlunger, farCautions, farLashCautions } from '../setting/far-turned.ts';
import {
  bledFirst,
  noGapFound,
  sameHeat,
  simpleRule,
  ZERO_FOUND_BY,
  zeroCautions,
} from '../setting/words.ts';
import { makerFirst } from '../springs/caution.ts';
import { ADJUSTER_MOUNTS, seatPerAdvance } from '../threads/adjuster-screw.ts';
import { adjusterThreadField } from '../threads/designation-field.ts';

const gap = (description: string, canBe: FieldRange) =>
  length(description, { sign: 'not-negative', canBe }).optional();

const FORMS = [['turns'], ['preload'], ['lashFound', 'lashWanted'], ['preloadWanted']] as const;

const input = z
  .strictObject({
    thread: adjusterThreadField(
      'thread of the stud, or of the adjusting screw; or its pitch alone, as 0.75 mm or 32 tpi',
    ),
    turns: threadTurns('turns of the nut or screw from zero lash, tightening positive').optional(),
    preload: gap('how far the lifter’s plunger is to be pressed down', CAN_BE.preload),
    lashFound: gap('gap at the valve tip as it was found; solid lifters, with lashWanted', CAN_BE.lashFound),
    lashWanted: gap('gap at the valve tip that is wanted; solid lifters, with lashFound', CAN_BE.lash),
    preloadWanted: gap(
      'how far the plunger is to be pressed down from zero lash; hydraulic lifters',
      CAN_BE.preload,
    ),
    ratio: ratio('rocker ratio, valve over lobe'),
    mount: choice(ADJUSTER_MOUNTS, 'nut on the stud, screw at the pushrod cup, or screw at the valve'),
    lifter: choice(['hydraulic', 'solid'], 'a plunger that can be pressed down, or none'),
    zeroFoundBy: choice(ZERO_FOUND_BY, 'how zero lash was found').optional(),
  })
  .superRefine(oneOfForms(...FORMS), evenIfFaulty)
  .meta(formsJsonSchema(...FORMS));

const output = z.object({
  seatMovement: out('length', 'how far the lifter’s plunger is pressed down; hydraulic lifters').optional(),
  lashChange: out(
    'length',
    'change of the gap at the valve tip, tightening negative; solid lifters',
  ).optional(),
  turns: outNumber('turns of the nut or screw, tightening positive'),
  degrees: out('angle', 'the same turns in degrees, tightening positive'),
  flats: outNumber('the same turns in flats of a hexagon, 60° each, tightening positive'),
  direction: outWord(
    ['tighten', 'loosen'],
    'which way to turn; left out where nothing is to be turned',
  ).optional(),
});

type Given = z.output<typeof input>;

/** A hydraulic lifter has no gap to set, and a solid one no plunger to press. */
function checkLifter({ lifter, ...given }: Given): void {
  const names = (all: readonly (keyof typeof given)[]) => all.filter((name) => given[name] !== undefined);
  const preloads = names(['preload', 'preloadWanted']);
  const gaps = names(['lashFound', 'lashWanted']);
  if (lifter === 'solid' && preloads.length > 0)
    impossible([...preloads, 'lifter'], 'a solid lifter has no plunger to press down');
  if (lifter === 'hydraulic' && gaps.length > 0)
    impossible([...gaps, 'lifter'], 'a hydraulic lifter has no gap to set: give turns or preload');
}

/** Turns that were given, or those that what is wanted needs. */
function turnsOf(given: Given, seatPerTurn: number): number {
  const { lashFound, lashWanted, ratio: rockerRatio } = given;
  if (given.turns !== undefined) return given.turns;
  const closes = lashFound === undefined || lashWanted === undefined ? undefined : lashFound - lashWanted;
  const wanted = given.preload ?? given.preloadWanted ?? 0;
  const turned = closes === undefined ? wanted / seatPerTurn : closes / (rockerRatio * seatPerTurn);
  if (Math.abs(turned) <= 1000) return turned;
  const fields = ['preload', 'preloadWanted', 'lashFound', 'lashWanted'] as const;
  return impossible(
    fields.filter((name) => given[name] !== undefined),
    'needs more than 1000 turns of this thread',
  );
}

/** Where the thread goes nowhere that could be measured there is no way to turn. */
function directionOf(advance: number): 'tighten' | 'loosen' | undefined {
  if (Math.abs(advance) <= EQUAL) return undefined;
  return advance > 0 ? 'tighten' : 'loosen';
}

/**
 * What turns of an adjuster do: preload of a hydraulic lifter, or the change of lash with a solid one; and the turns
 * that a wanted preload or lash needs.
 *
 * Equation: seatMovement = turns·P·(1 + 1/r) for a nut on the stud, turns·P for a screw at the cup, turns·P/r for a
 * screw at the valve; lashChange = −r·turns·P·(1 + 1/r), −r·turns·P, −turns·P; lashChange = lashWanted − lashFound;
 * degrees = 360·turns; flats = 6·turns
 *
 * @param thread [1] designation of the thread, or its pitch alone; the pitch P [m] is the travel per turn
 * @param turns [1] from zero lash, tightening positive; exactly one of the four forms is given
 * @param preload [m] wanted travel of the plunger, not negative; instead of `turns`, hydraulic lifters alone
 * @param lashFound [m] gap at the valve tip as found, not negative; with `lashWanted`, instead of `turns`, solid lifters
 * alone
 * @param lashWanted [m] gap at the valve tip that is wanted, not negative; with `lashFound`
 * @param preloadWanted [m] the same as `preload`, by the name that goes with `lashWanted`
 * @param ratio [1] rocker ratio r, valve over lobe, above zero
 * @param mount [1] `stud-nut`, `cup-screw` or `valve-end-screw`
 * @param lifter [1] `hydraulic` or `solid`
 * @param zeroFoundBy [1] `up-and-down`, `spin` or `feeler`: what zero is cautioned of; left out, nothing
 * @returns seatMovement [m] (hydraulic), lashChange [m] (solid, tightening negative), turns [1], degrees [rad], flats [1]
 * (each tightening positive), direction [1] (`tighten` or `loosen`; left out where nothing is to be turned)
 * @throws not-allowed when the thread is not in the table, or two of the forms come
 * @throws required when lashFound or lashWanted comes without the other
 * @throws impossible-input when a preload is wanted of a solid lifter, or a lash of a hydraulic one
 * @throws impossible-input when what is wanted would need more than 1000 turns
 *
 * Validity: arms nearly in line, small turns; valve closed, lifter on the base circle. Set against the full geometry of
 * usual rockers it is right within 1 %.
 * Source: derived here; travel per turn by ASME B1.1 and ISO 965-2.
 */
function adjuster(given: Given): z.output<typeof output> {
  checkLifter(given);
  const { thread, ratio: rockerRatio, mount, lifter } = given;
  const perTurn = thread.pitch * seatPerAdvance(mount, rockerRatio);
  const turned = turnsOf(given, perTurn);
  const travel = turned * perTurn;
  return {
    // Adding zero turns the −0 of no turn into 0.
    ...(lifter === 'hydraulic' ? { seatMovement: travel } : { lashChange: -rockerRatio * travel + 0 }),
    turns: turned,
    degrees: 2 * Math.PI * turned,
    flats: 6 * turned,
    ...defined({ direction: directionOf(turned * thread.pitch) }),
  };
}

export const computation = defineComputation({
  name: 'adjuster',
  title: 'Preload and lash by turns',
  summary:
    'What turns of a stud nut or adjusting screw do to preload or lash, and the turns that either needs.',
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
    'flats',
    'lash found',
  ],
  input,
  output,
  equation:
    'plunger travel = turns × pitch × (1 + 1/ratio) for a nut on the stud, × 1 for a screw at the cup, × 1/ratio for one at the valve; lash change = −ratio × that = lash wanted − lash found; 360° and 6 flats to the turn',
  tex: 's = n P\\,\\left(1+\\tfrac1r\\right)\\;\\text{(stud)}, \\quad n P\\;\\text{(cup)}, \\quad \\tfrac{n P}{r}\\;\\text{(valve end)}, \\qquad \\Delta g = -r\\,s',
  source: 'derived here, by the lever about the valve tip; travel per turn by ASME B1.1 and ISO 965-2',
  validity:
    'arms nearly in line, valve closed, lifter on the base circle; within 1 % of the full geometry of usual rockers',
  assumptions: ({ lifter, lashFound }) => [
    lifter === 'hydraulic'
      ? 'turns are counted from zero lash, the valve stays closed and the plunger gives way'
      : 'the pushrod side stands still and the gap at the valve tip changes; a negative sum means that lash closes',
    'tip, pivot and cup nearly in line; the full geometry of usual rockers differs by up to 1 %',
    'degrees and flats are of the nut or screw itself: a flat is 60° of a hexagon',
    ...(lashFound === undefined
      ? []
      : ['the turn goes on from where the nut or screw stands now, with its lock slack']),
    'a locking nut’s own take-up is not counted: check again once it is locked',
  ],
  cautions: ({ mount, lifter, lashFound, lashWanted, zeroFoundBy }, { seatMovement = 0 }) => [
    ...farCautions(seatMovement),
    ...farLashCautions(lashFound, lashWanted),
    ...(lashFound === undefined ? zeroCautions(zeroFoundBy, lifter) : []),
    ...(lifter === 'hydraulic' ? [bledFirst] : []),
    ...(lashFound === undefined ? [] : [sameHeat]),
    ...(lashFound === 0 ? [noGapFound] : []),
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
    result: {
      seatMovement: { value: 0.125 / 3, unit: 'in' },
      turns: 0.5,
      degrees: { value: 180, unit: 'deg' },
      flats: 3,
      direction: 'tighten',
    },
  },
  ofEngine: ({ turns: counted }, { seatMovement, lashChange }) => {
    if (counted === undefined) return;
    if (seatMovement !== undefined) checkPlunger(counted, seatMovement);
    if (lashChange !== undefined) checkGap(counted, lashChange);
  },
  headline: ({ turns }) => (turns === undefined ? ['turns'] : ['seatMovement', 'lashChange']),
  compute: adjuster,
});
