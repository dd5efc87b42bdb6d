import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import { halfWidthOf } from '../../identify/how-read.ts';
import { toolWithin } from '../../identify/tools.ts';
import { allowance } from '../../kit/allowances.ts';
import { IN } from '../../kit/si.ts';
import { CANDIDATES } from '../../threads/hole-fit.ts';
import { upperFirst } from '../common/said.ts';
import type { HoleDetail } from './detail.ts';
import { amongOf, type CountedReading, choice, MISREAD, type PartDoubt, sized, without } from './doubts.ts';
import { holesOf, sizeName } from './holes.ts';
import { eitherSaid } from './size-said.ts';
import { twoSizes } from './two-sizes.ts';

const HOLE = 'hole-across-trunnion';

/** The sizes next to a hole, under and over it. */
function besideOf(size: number): string[] {
  const under = CANDIDATES.filter(({ nominalHole }) => nominalHole <= size);
  const over = CANDIDATES.filter(({ nominalHole }) => nominalHole > size);
  const nearest = (all: typeof CANDIDATES) =>
    all.toSorted((a, b) => Math.abs(a.nominalHole - size) - Math.abs(b.nominalHole - size))[0]?.thread.size;
  return [nearest(under), nearest(over)].flatMap((each) => each ?? []);
}

/** Sizes that the reading leaves in reach; none: those next to it. */
export function sizesToTry(hole: HoleDetail, size: number): string[] {
  const inReach = [...new Set(hole.threads.map(({ designation }) => sizeName(designation)))];
  return inReach.length > 0 ? inReach : besideOf(size);
}

/** A rule or a guess puts any hole between sizes: that is read with a caliper first. */
const isFine = (reading: CountedReading & { readonly size: number }): boolean =>
  halfWidthOf(reading) <= toolWithin(reading.kind, 'caliper') * IN;

/** `between 3/8 and 7/16`, `over 7/16`, `near 3/8` */
export function whereSaid(hole: HoleDetail, size: number): string {
  const sizes = sizesToTry(hole, size);
  if (hole.threads.length > 0) return `near ${eitherSaid(sizes)}, and not on it`;
  if (sizes.length === 2) return `between ${sizes.join(' and ')}`;
  return `${CANDIDATES.every(({ nominalHole }) => nominalHole > size) ? 'under' : 'over'} ${sizes.join('')}`;
}

/** What settles it: trade practice 3 and confusion 23, common practice, no published source. */
export const TRY = 'try the stud that came out, or a drill shank, through the hole by hand';

/** Farther over the largest stud than any drilling: the hole of a shaft. */
const FAR = allowance('hole-of-shaft');
const LARGEST = Math.max(...CANDIDATES.map(({ nominalHole }) => nominalHole));
export const isShafts = (readings: readonly CountedReading[], size: number): boolean =>
  size > LARGEST + FAR || readings.some(({ kind, word }) => kind === 'mount' && word === 'shaft');

/** The hole that was read outside every size that agrees, with its size; left out where one agrees or was tried. */
export function betweenSizes(
  readings: readonly CountedReading[],
  details: readonly HoleDetail[],
): { readonly hole: HoleDetail; readonly size: number; readonly ids: readonly string[] } | undefined {
  const holes = sized(readings, HOLE);
  if (!holes.every(isFine) || details.some(({ word, tried }) => word === 'agrees' || tried !== undefined))
    return undefined;
  const [hole] = details;
  const size = holes.find(({ id }) => id === hole?.entryId)?.size;
  return hole === undefined || size === undefined
    ? undefined
    : { hole, size, ids: holes.map(({ id }) => id).sort() };
}

/** A hole outside every size that agrees: no stud is named before one, or a drill shank, was tried through it. */
export function holeBetweenSizes(readings: readonly CountedReading[]): PartDoubt[] {
  const between = betweenSizes(readings, holesOf(readings));
  // Two sizes of one hole are asked about first.
  if (between === undefined || isShafts(readings, between.size)) return [];
  if (twoSizes(sized(readings, HOLE)).length > 0) return [];
  const { hole, size, ids } = between;
  const sizes = sizesToTry(hole, size);
  return [
    {
      code: 'hole-between-sizes',
      ask: `The hole reads ${asEntered(hole.readAs)}, ${whereSaid(hole, size)}. Which stud or drill shank goes through it by hand without play?`,
      // The same question whatever the sizes beside it are, so that its answer holds.
      knownBy: 'which stud or drill shank goes through the hole without play',
      test: TRY,
      restsOn: ids,
      among: amongOf(ids),
      choices: [
        ...sizes.map((each) =>
          choice(
            `goes-${each.replace('/', '-')}`,
            `${upperFirst(each)}, without play`,
            `The hole counts as made for ${each}; the thread still proves it.`,
          ),
        ),
        choice('none', 'None: one is loose, the next does not go in', 'No usual stud is named for it.'),
        MISREAD,
      ],
      effect: (now, chosen) => {
        if (chosen === 'found') return without(now, ids);
        const tried =
          chosen === 'none' ? chosen : sizes.find((each) => chosen === `goes-${each.replace('/', '-')}`);
        return tried === undefined
          ? now
          : now.map((each) => (ids.includes(each.id) ? { ...each, tried } : each));
      },
    },
  ];
}
