import { sideOfValve } from '../../../../shared/schemas/words.ts';
import type { EnteredAt } from '../assessment.ts';
import type { Lack } from '../common/lack.ts';
import { listed, placeOf, upperFirst } from '../common/said.ts';
import { hasShims } from '../common/shimmed.ts';
import { valveNames } from '../common/valve-names.ts';
import type { Evidence } from '../evidence.ts';
import type { ShimRow } from '../lash/detail.ts';
import { isShut } from '../lash/shim-said.ts';
import { LOOKED_FIRST, shimsOf } from '../lash/shims.ts';
import type { LashWork } from '../lash/work.ts';
import type { NoiseDetail } from '../noise/detail.ts';
import { MUST, MUST_TURN, type Need, need } from './need.ts';

/** What of a shim is on the card is entered there, and the gap with its heat in the log. */
function atLack(row: ShimRow, { code }: Lack): EnteredAt {
  if (code === 'heat-of-card') return { step: 'cam', field: 'cam.lashAt' };
  return code === 'card-figure'
    ? { step: 'cam', field: `cam.${sideOfValve(row.valve)}.lash` }
    : { part: 'shims' };
}

/** What is lacked most often goes first: of the card or the engine it is lacked by every valve. */
function firstLacked(rows: readonly ShimRow[]): { readonly row: ShimRow; readonly lack: Lack } | undefined {
  // What is looked at first has a question of its own, and the figures of that gap are not asked for before.
  const open = rows.filter(({ lacks }) => lacks.every(({ code }) => code !== LOOKED_FIRST));
  const all = open.flatMap((row) => row.lacks.map((lack) => ({ row, lack })));
  const times = ({ code }: Lack): number => all.filter(({ lack }) => lack.code === code).length;
  return all.toSorted((a, b) => times(b.lack) - times(a.lack))[0];
}

/** Once a lash is there, the shim that each valve wants is the answer; on a call about noise it can wait. */
function shimFigures(evidence: Evidence, { active }: NoiseDetail, { notSet }: LashWork): Need[] {
  const first = firstLacked(shimsOf(evidence, notSet).detail.rows);
  if (first === undefined) return [];
  const { row, lack } = first;
  const place = placeOf(row);
  return [
    need(
      'shim-figures',
      `${lack.said}, for the shim of ${place}`,
      isShut(row)
        ? `${upperFirst(place)} has no gap: a thinner shim goes in first, then the gap is measured.`
        : `For the shim of ${place} find out: ${lack.said}.`,
      false,
      {
        ...(active ? {} : isShut(row) || lack.turns ? MUST_TURN : MUST),
        at: atLack(row, lack),
      },
    ),
  ];
}

/** The gap of every valve with the shim that is in, and what the one that goes in still wants. */
export const ofShims = (evidence: Evidence, noise: NoiseDetail, work: LashWork): Need[] => [
  need(
    'shims',
    'the shim that is in, with each lash',
    'Measure the shim that is in each valve, and enter it with its lash.',
    evidence.lash.some(({ standing, shim }) => standing && shim !== undefined),
    { at: { part: 'shims', field: 'shim' } },
  ),
  ...shimFigures(evidence, noise, work),
];

/** Some followers have a screw, others a shim: with that measured what goes in can be worked out. */
export const ofFollowerShim = (evidence: Evidence): Need[] =>
  evidence.engine.gear !== 'finger-follower' || hasShims(evidence)
    ? []
    : [
        need(
          'shims',
          'the shim over the stem, where one sets the lash',
          'Ask whether a shim over the stem sets the lash; then measure it, and enter it with its lash.',
          false,
        ),
      ];

/**
 * With buckets the camshaft comes out for a shim: every gap is read first, so that shims can change places. Once one was set
 * it has been out.
 */
export function otherGaps(evidence: Evidence): Need[] {
  const { cylinders, gear } = evidence.engine;
  if (gear !== 'bucket' || cylinders === undefined) return [];
  const standing = evidence.lash.filter((line) => line.standing);
  const read = new Set(standing.map(placeOf));
  const all = Array.from({ length: cylinders }, (_, at) => at + 1).flatMap((cylinder) =>
    valveNames(evidence).map((valve) => placeOf({ cylinder, valve })),
  );
  const left = all.filter((place) => !read.has(place));
  if (read.size === 0 || left.length === 0 || standing.some(({ moment }) => moment === 'set')) return [];
  const named = left.length > 3 ? `the ${left.length} other valves` : listed(left);
  return [
    need(
      'other-gaps',
      `the gap of ${named}, before a camshaft comes out`,
      `Read the gap of ${named} too, before a camshaft comes out: a shim may go from one valve to another.`,
      false,
      MUST_TURN,
    ),
  ];
}
