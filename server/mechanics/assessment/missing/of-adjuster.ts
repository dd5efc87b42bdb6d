import type { Evidence } from '../evidence.ts';
import type { NoiseDetail } from '../noise/detail.ts';
import { MUST_TURN, type Need, need, worked } from './need.ts';

/** A hydraulic lifter has no gap: how far its plunger is pressed down is what was set. */
const isHydraulic = ({ engine }: Evidence): boolean => engine.lifter?.startsWith('hydraulic') ?? false;

const preload = (evidence: Evidence): Need =>
  need(
    'preload',
    'the turns past zero lash, and on which thread',
    'Let the lifter bleed down, find zero by up-and-down play, then count the turns. Say which thread it is.',
    worked(evidence, 'lifter-preload') || worked(evidence, 'adjuster'),
    MUST_TURN,
  );

const lash = (evidence: Evidence, noise: NoiseDetail): Need =>
  need(
    'lash',
    'a lash as it was found or set',
    // On a call about noise the nut has a question of its own.
    noise.active
      ? 'Read the lash as found, before anything is set.'
      : 'Read the lash as found, before anything is set, and look whether the nut has moved.',
    evidence.lash.some(({ standing }) => standing),
    MUST_TURN,
  );

/** Setting one again whose gap grew, or that is noisy, hides it: its cause is asked after, not the turns. */
export function ofAdjuster(evidence: Evidence, noise: NoiseDetail): Need[] {
  if (isHydraulic(evidence)) return noise.active ? [] : [preload(evidence)];
  return [
    lash(evidence, noise),
    ...(evidence.engine.gear === 'bucket'
      ? [
          need(
            'shims',
            'the shim that is in, with each lash',
            'Measure the shim that is in each valve, and enter it with its lash.',
            evidence.lash.some(({ standing, shim }) => standing && shim !== undefined),
          ),
        ]
      : []),
    ...(noise.active
      ? []
      : [
          need(
            'turns',
            'what the turns of the adjuster do',
            'Give thread and turns of the adjuster.',
            worked(evidence, 'adjuster'),
          ),
        ]),
  ];
}
