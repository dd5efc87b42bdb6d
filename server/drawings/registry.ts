import type { z } from 'zod';
import type { UnitSystem } from '../../shared/quantities/units.ts';
import { type Drawing, rulerOf } from './drawing.ts';
import { adjuster, cosineError, lashHotCold, lifterPreload } from './from-answers/adjusters.ts';
import { camTiming, centreline, topDeadCentre } from './from-answers/cam.ts';
import type { Draw } from './from-answers/draws.ts';
import { gapScan, lobeProfile, pistonDrop, pistonToValve } from './from-answers/lobe-and-piston.ts';
import { capability, controlChart, outliers } from './from-answers/lots.ts';
import { separationSpeed } from './from-answers/motion.ts';
import { coverRoom, fastenerForHole, thread } from './from-answers/parts.ts';
import {
  armLengths,
  deflection,
  dialReading,
  linkage,
  ratioThroughLift,
  rollerSweep,
  standHeight,
} from './from-answers/rocker.ts';
import { retainerToSeal, springLoad, springNest } from './from-answers/springs.ts';

/** Which computation has which drawing. */
export const DRAWINGS: Readonly<Record<string, Draw>> = {
  adjuster,
  'arm-lengths': armLengths,
  'cam-timing': camTiming,
  capability,
  centreline,
  'control-chart': controlChart,
  'cosine-error': cosineError,
  'cover-room': coverRoom,
  deflection,
  'dial-reading': dialReading,
  'fastener-for-hole': fastenerForHole,
  'gap-scan': gapScan,
  'lash-hot-cold': lashHotCold,
  'lifter-preload': lifterPreload,
  linkage,
  'lobe-profile': lobeProfile,
  outliers,
  'piston-drop': pistonDrop,
  'piston-to-valve': pistonToValve,
  'ratio-through-lift': ratioThroughLift,
  'retainer-to-seal': retainerToSeal,
  'roller-sweep': rollerSweep,
  'separation-speed': separationSpeed,
  'spring-load': springLoad,
  'spring-nest': springNest,
  'stand-height': standHeight,
  thread,
  'top-dead-centre': topDeadCentre,
};

/** The drawings of an answer: `body` is the JSON input as sent, `resultInInches` the JSON answer in inch units. */
export function drawingsOf(
  each: { readonly name: string; readonly input: z.ZodType },
  body: unknown,
  resultInInches: unknown,
  units: UnitSystem,
): readonly Drawing[] {
  const draw = DRAWINGS[each.name];
  if (draw === undefined) return [];
  return draw(each.input.parse(body), resultInInches, { id: `drawing-${each.name}`, ruler: rulerOf(units) });
}
