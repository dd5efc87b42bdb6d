import { placeOf, upperFirst } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { ShimRow } from '../lash/detail.ts';
import { isShut } from '../lash/shim-said.ts';
import { shimsOf } from '../lash/shims.ts';
import type { NoiseDetail } from '../noise/detail.ts';
import { MUST_TURN, type Need, need, worked } from './need.ts';

/** Of a bucket there is no nut; on a call about noise it has a question of its own. */
const readLash = ({ engine }: Evidence, { active }: NoiseDetail): string =>
  active || engine.gear === 'bucket'
    ? 'Read the lash as found, before anything is set.'
    : 'Read the lash as found, before anything is set, and look whether the nut has moved.';

/** What is lacked most often goes first: of the card or the engine it is lacked by every valve. */
function firstLacked(rows: readonly ShimRow[]): { readonly row: ShimRow; readonly lack: string } | undefined {
  const all = rows.flatMap((row) => row.lacks.map((lack) => ({ row, lack })));
  const times = (lack: string): number => all.filter((each) => each.lack === lack).length;
  return all.toSorted((a, b) => times(b.lack) - times(a.lack))[0];
}

/** Once a lash is there, the shim that each valve wants is the answer; on a call about noise it can wait. */
function ofShims(evidence: Evidence, { active }: NoiseDetail): Need[] {
  const { rows } = shimsOf(evidence).detail;
  const first = firstLacked(rows);
  if (first === undefined) return [];
  const { row, lack } = first;
  const place = placeOf(row);
  return [
    need(
      'shim-figures',
      `${lack}, for the shim of ${place}`,
      isShut(row)
        ? `${upperFirst(place)} has no gap: a thinner shim goes in first, then the gap is measured.`
        : `Get this for the shim of ${place}: ${lack}.`,
      false,
      active ? {} : MUST_TURN,
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
  ...(evidence.engine.gear === 'bucket'
    ? [
        need(
          'shims',
          'the shim that is in, with each lash',
          'Measure the shim that is in each valve, and enter it with its lash.',
          evidence.lash.some(({ standing, shim }) => standing && shim !== undefined),
        ),
        ...ofShims(evidence, noise),
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
