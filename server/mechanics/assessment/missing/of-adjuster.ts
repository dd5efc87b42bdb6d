import type { Evidence } from '../evidence.ts';
import type { NoiseDetail } from '../noise/detail.ts';
import { MUST_TURN, type Need, need, worked } from './need.ts';

export const ofAdjuster = (evidence: Evidence, noise: NoiseDetail): Need[] => [
  need(
    'lash',
    'a lash as it was found or set',
    // On a call about noise the nut has a question of its own.
    noise.active
      ? 'Read the lash as found, before anything is set.'
      : 'Read the lash as found, before anything is set, and look whether the nut has moved.',
    evidence.lash.some(({ standing }) => standing),
    MUST_TURN,
  ),
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
  // Setting one again whose gap grew, or that is noisy, hides it: its cause is asked after, not the turns.
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
