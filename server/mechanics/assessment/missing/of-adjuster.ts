import { planOf } from '../../../../shared/schemas/goals.ts';
import type { Evidence } from '../evidence.ts';
import { MUST_TURN, type Need, need, worked } from './need.ts';

export const ofAdjuster = (evidence: Evidence): Need[] => [
  need(
    'lash',
    'a lash as it was found or set',
    'Read the lash as it is found, before anything is set, and look whether the nut has moved.',
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
  // Setting a noisy one again hides it: there the log is asked for, not the turns.
  ...(planOf(evidence.call.goal).logFirst
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
