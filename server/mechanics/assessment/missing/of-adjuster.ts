import type { Evidence } from '../evidence.ts';
import { shimsOf } from '../lash/shims.ts';
import type { NoiseDetail } from '../noise/detail.ts';
import { MUST, MUST_TURN, type Need, need, worked } from './need.ts';

/** Of a bucket there is no nut; on a call about noise it has a question of its own. */
const readLash = ({ engine }: Evidence, { active }: NoiseDetail): string =>
  active || engine.gear === 'bucket'
    ? 'Read the lash as found, before anything is set.'
    : 'Read the lash as found, before anything is set, and look whether the nut has moved.';

/** Shims are told once nothing is lacking of any valve that was read; on a call about noise they can wait. */
function shimNeeds(evidence: Evidence, { active }: NoiseDetail): Need[] {
  if (evidence.engine.gear !== 'bucket') return [];
  const { rows } = shimsOf(evidence).detail;
  const lacking = rows.find(({ lacks }) => lacks.length > 0);
  const ask = 'Measure the shim that is in each valve, and enter it with its lash.';
  return [
    need(
      'shims',
      'the shim that is in, with each lash',
      lacking === undefined || rows.every(({ fitted }) => fitted === undefined) ? ask : lacking.sentence,
      rows.length > 0 && lacking === undefined,
      active || rows.length === 0 ? {} : MUST,
    ),
  ];
}

export const ofAdjuster = (evidence: Evidence, noise: NoiseDetail): Need[] => [
  need(
    'lash',
    'a lash as it was found or set',
    readLash(evidence, noise),
    evidence.lash.some(({ standing }) => standing),
    MUST_TURN,
  ),
  ...shimNeeds(evidence, noise),
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
