import { allowance } from '../../kit/allowances.ts';
import { defaultLimit } from '../../kit/limits.ts';
import { CANDIDATES } from '../../threads/hole-fit.ts';
import { listedOr } from '../common/said.ts';
import { shareSaid } from './chance.ts';
import type { ImpliedDetail } from './detail.ts';
import type { FamilyEvidence } from './family.ts';
import { sizeSaid } from './size-said.ts';

interface Weighted {
  readonly family: FamilyEvidence;
  readonly probability: number;
}

/** What a family means for what goes with it; families that mean the same have the same key. */
interface Meaning {
  readonly key: string;
  readonly sentence: string;
}

/** Holes made for one size differ by no more than a rounding. */
const SAME_HOLE = allowance('hole-alike');

function studOf({ sizes, features }: FamilyEvidence, threadRead: boolean): Meaning | undefined {
  const hole = sizes['hole-across-trunnion'];
  if (hole === undefined || features.mount === 'shaft') return undefined;
  const threads = CANDIDATES.filter(({ nominalHole }) => Math.abs(nominalHole - hole) <= SAME_HOLE);
  const names = [...new Set(threads.map(({ thread }) => thread.size))];
  if (names.length === 0) return undefined;
  return {
    key: names.join(),
    sentence: `a ${sizeSaid(hole)} hole, so a ${listedOr(names)} stud or bolt${threadRead ? '' : '; its thread is still to read'}`,
  };
}

function coverOf({ sizes }: FamilyEvidence): Meaning | undefined {
  const width = sizes['width-across-trunnion'];
  if (width === undefined) return undefined;
  const across = `${sizeSaid(width)} across the trunnion`;
  if (width >= defaultLimit('wide-assembly-from'))
    return { key: 'wide', sentence: `wide, ${across}, so for a cover bolted round its edge` };
  if (width <= defaultLimit('narrow-assembly-up-to'))
    return { key: 'narrow', sentence: `narrow, ${across}, so for a cover bolted either way` };
  return { key: 'between', sentence: `between narrow and wide, ${across}: the cover is measured` };
}

const GUIDES: Readonly<Record<string, string>> = {
  stud: 'a stud mount, so the pushrod is led by guide plates, a self-aligning tip or the slots of the head, by one of them alone; which, the catalogue does not say',
  pedestal: 'a pedestal mount, which holds the arm in line itself; no guide plate goes with it as a rule',
  shaft: 'a shaft mount, which holds the arm in line itself; no guide plate goes with it as a rule',
};

function guideOf({ features }: FamilyEvidence): Meaning | undefined {
  const { mount = '' } = features;
  const sentence = GUIDES[mount];
  return sentence === undefined ? undefined : { key: mount === 'stud' ? 'stud' : 'in line', sentence };
}

const THINGS = [
  { what: 'stud', title: 'Stud', of: studOf },
  { what: 'cover', title: 'Cover', of: coverOf },
  { what: 'guide', title: 'Guide plate', of: guideOf },
] as const;

/**
 * What the family that stands first means for stud, cover and guide plate: never without its chance, and with that of
 * all families that mean the same. Nothing, while none of the families stands first.
 *
 * @param threadRead the thread that came out was read, diameter and pitch
 */
export function impliedBy(
  families: readonly Weighted[],
  noneOfThese: number,
  { threadRead }: { readonly threadRead: boolean },
): ImpliedDetail[] {
  const [first] = families;
  if (first === undefined || first.probability <= noneOfThese) return [];
  return THINGS.flatMap(({ what, title, of }): ImpliedDetail[] => {
    const meaning = of(first.family, threadRead);
    if (meaning === undefined) return [];
    const together = families.reduce(
      (sum, { family, probability }) => sum + (of(family, threadRead)?.key === meaning.key ? probability : 0),
      0,
    );
    return [
      {
        what,
        title,
        probability: first.probability,
        together,
        sentence: `If it is ${first.family.name}, ${shareSaid(first.probability)}: ${meaning.sentence}. Families that mean the same come to ${shareSaid(together)}.`,
      },
    ];
  });
}
