import { z } from 'zod';
import { defined } from '../../../shared/defined.ts';
import { impossible } from '../../../shared/problems/faults.ts';
import { CAN_BE } from '../../../shared/schemas/can-be.ts';
import { out } from '../../../shared/schemas/outputs.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { lengths } from '../../../shared/schemas/quantity-lists.ts';
import { turningCaution } from '../cam/caution.ts';
import { defineComputation } from '../kit/computation.ts';
import { everyFault } from '../kit/every-fault.ts';
import { EQUAL, nearestOf } from '../kit/nearest.ts';
import { saidLength } from '../kit/said.ts';
import { makerFirst } from '../springs/caution.ts';
import { computation as rollerSweep } from './roller-sweep.ts';

const height = (description: string) => length(description, { sign: 'any', canBe: CAN_BE.overFace });

const input = z.strictObject({
  pivotHeight: height('height of the pivot’s axis over a face, along the valve; negative below the face'),
  tipHeight: height(
    'height over the same face, valve closed: of the stem’s end where the roller’s radius is given, of the roller’s axis where not',
  ),
  netLift: length('lift of the valve off its seat', { below: 'impossible-input', canBe: CAN_BE.valveLift }),
  pivotToTip: length('rocker pivot to the roller’s centre', { canBe: CAN_BE.pivotToTip }),
  rollerRadius: length('radius of the roller, where the tip height is that of the stem’s end', {
    canBe: CAN_BE.rollerRadius,
  }).optional(),
  shims: lengths('thicknesses of the shims there are, each to be used alone; may be empty', {
    least: 0,
    canBe: CAN_BE.shims,
  }).optional(),
});

const below = (when: string) =>
  out('length', `pivot below the roller’s axis, valve closed, along the valve, ${when}; negative above it`);

const output = z.object({
  shim: out('length', 'how far the stand is to be raised; negative: lowered'),
  pivotOffset: z
    .object({ now: below('as measured'), wanted: below('for the least sweep') })
    .meta({ description: 'where the pivot is, and where half the lift puts it' }),
  nearest: z
    .object({
      shim: out('length', 'the nearest of the shims; of two equally near the thinner'),
      difference: out('length', 'how much thicker it is than wanted; negative when thinner'),
      pivotOffset: below('with this shim'),
    })
    .meta({ description: 'the nearest of the shims; left out where the stand is not to be raised' })
    .optional(),
});

type Given = z.output<typeof input>;
type Result = z.output<typeof output>;

const offsetNow = ({ tipHeight, rollerRadius = 0, pivotHeight }: Given): number =>
  tipHeight + rollerRadius - pivotHeight;

function checkArm(given: Given): void {
  const { pivotToTip, rollerRadius } = given;
  everyFault(
    () => {
      if (rollerRadius !== undefined && rollerRadius >= pivotToTip)
        impossible(['rollerRadius', 'pivotToTip'], 'the roller would reach the pivot');
    },
    () => {
      if (Math.abs(offsetNow(given)) > pivotToTip)
        impossible(
          ['pivotHeight', 'tipHeight', 'pivotToTip'],
          'the roller’s axis would be further from the pivot along the valve than the arm is long',
        );
    },
    () => wantedOffset(given),
  );
}

/** Roller-sweep’s own, so that the two can’t disagree. */
const wantedOffset = ({ pivotToTip, netLift }: Given): number =>
  rollerSweep.compute({ pivotToTip, netLift, setAt: 'mid-lift' }).pivotOffset;

function nearestShim(shims: readonly number[], wanted: number, now: number): Result['nearest'] {
  const nearest = wanted > EQUAL ? nearestOf(shims, wanted) : undefined;
  if (nearest === undefined) return undefined;
  return { shim: nearest, difference: nearest - wanted, pivotOffset: now - nearest };
}

/**
 * The shim that brings a rocker stand to the height of the least sweep, by the half-lift rule.
 *
 * The roller’s axis, valve closed, is at tipHeight + rollerRadius where the radius is given: the roller stands on the
 * stem’s end. Without a radius tipHeight is taken as the height of the roller’s axis itself. Raising the stand leaves
 * the axis where it is, because the stem’s end is square to the valve; only the arm turns, and the pushrod has to follow.
 *
 * Equation: now = tipHeight + rollerRadius − pivotHeight; wanted = pivotOffset of `roller-sweep` at mid-lift, h/2;
 * shim = now − wanted
 *
 * @param pivotHeight [m] height of the pivot’s axis over a face, along the valve, upward positive
 * @param tipHeight [m] height over the same face, valve closed: of the stem’s end, or without rollerRadius of the
 * roller’s axis
 * @param netLift [m] lift of the valve h, above zero
 * @param pivotToTip [m] pivot to the roller’s centre, above zero
 * @param rollerRadius [m] radius of the roller, above zero, below pivotToTip; left out, tipHeight is the roller’s axis
 * @param shims [m] thicknesses there are, above zero; each is taken alone, so a stack is listed as its sum; left out or
 * empty, none is named
 * @returns shim [m] (positive: raise), pivotOffset (now [m], wanted [m]: pivot below the roller’s axis, closed,
 * positive), nearest (shim [m], difference [m], pivotOffset [m]; of two equally near the thinner, which changes less;
 * left out where the stand is not to be raised: no shim lowers it)
 * @throws impossible-input when the roller’s axis is further from the pivot along the valve than the arm is long
 * @throws impossible-input when the lift is over twice the arm, or the roller’s radius is not below it
 *
 * Validity: flat stem end square to the valve, pivot standing still, heights along the valve and not along a canted face.
 * Source: half-lift rule by a rocker-geometry page; derived here, and least by a search over every height.
 */
function standHeight(given: Given): Result {
  checkArm(given);
  const now = offsetNow(given);
  const wanted = wantedOffset(given);
  const shim = now - wanted;
  return {
    shim,
    pivotOffset: { now, wanted },
    ...defined({ nearest: nearestShim(given.shims ?? [], shim, now) }),
  };
}

function ofShims({ shims }: Given, { shim, nearest }: Result): string[] {
  if (shim < -EQUAL)
    return [
      `The stand is ${saidLength(-shim)} too high, and no shim lowers it: a lower stand, a longer valve or a cap on its stem; machining is for a qualified shop.`,
    ];
  if (shims?.length === 0) return ['No shims were named to choose from.'];
  if (nearest !== undefined && nearest.shim > 2 * shim + EQUAL)
    return [
      `No shim at all is nearer than the thinnest of these: ${saidLength(shim)} low against ${saidLength(nearest.difference)} high.`,
    ];
  return [];
}

export const computation = defineComputation({
  name: 'stand-height',
  title: 'Height of a rocker stand',
  summary: 'How far a rocker stand is to be raised or lowered for the least sweep, and the nearest shim.',
  words: ['stand', 'pedestal', 'shaft rocker', 'shim', 'half-lift', 'mid-lift', 'geometry', 'pivot height'],
  input,
  output,
  equation:
    'pivot offset now = tip height + roller radius − pivot height; wanted = net lift/2; shim = now − wanted',
  tex: 'o_\\mathrm{now} = y_\\mathrm{tip} + r_\\mathrm{roller} - y_\\mathrm{pivot}, \\qquad s = o_\\mathrm{now} - \\tfrac{h}{2}',
  source: 'half-lift rule by a rocker-geometry page; derived here, and least by a search over every height',
  validity: 'flat stem end square to the valve, pivot standing still, heights measured along the valve',
  assumptions: ({ rollerRadius }) => [
    'both heights are upward from one face, along the valve and not square to a canted cover rail',
    rollerRadius === undefined
      ? 'the tip height is the height of the roller’s axis, as no radius was given'
      : 'the tip height is the height of the stem’s end; the roller stands on it',
    'the stem’s end is flat and square to the valve, and the pivot does not move: no flex',
    'one shim under the stand: a stack is listed as its sum',
  ],
  cautions: (given, result) => [
    ...ofShims(given, result),
    'Another height of the stand wants another pushrod length or adjuster setting: check preload or lash, and the tip’s mark, again.',
    'Threads, bolt length and oil holes of the stand must still hold with the shim under it.',
    turningCaution,
    makerFirst,
  ],
  example: {
    inputs: {
      pivotHeight: { value: 1.95, unit: 'in' },
      tipHeight: { value: 2, unit: 'in' },
      netLift: { value: 0.6, unit: 'in' },
      pivotToTip: { value: 1.5, unit: 'in' },
      rollerRadius: { value: 0.3, unit: 'in' },
      shims: { values: [0.03, 0.06], unit: 'in' },
    },
    result: {
      shim: { value: 0.05, unit: 'in' },
      pivotOffset: { now: { value: 0.35, unit: 'in' }, wanted: { value: 0.3, unit: 'in' } },
      nearest: {
        shim: { value: 0.06, unit: 'in' },
        difference: { value: 0.01, unit: 'in' },
        pivotOffset: { value: 0.29, unit: 'in' },
      },
    },
  },
  headline: () => ['shim'],
  compute: standHeight,
});
