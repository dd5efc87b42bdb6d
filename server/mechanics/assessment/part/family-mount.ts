import { IDENTIFICATION_MODEL } from '../../identify/model.ts';
import type { Evidence } from '../evidence.ts';
import { type CountedReading, choice, type PartDoubt } from './doubts.ts';
import type { FamilyEvidence } from './family.ts';
import { askAlone } from './odd-reading.ts';
import { firstOf, type Ranked } from './ranking.ts';

/*
 * What holds a rocker is seen with one’s own eyes: a family of another mount is none that the part is of, however well its
 * sizes go. Common practice, no published source.
 */

/** The family that the sizes name, with its mount where the catalogue has one. */
function namedBySizes(
  readings: readonly CountedReading[],
  families: readonly FamilyEvidence[],
): { readonly family: FamilyEvidence; readonly mount: string } | undefined {
  const { family, probability } = firstOf(readings, families);
  const mount = family?.features.mount;
  if (family === undefined || mount === undefined) return undefined;
  return probability < IDENTIFICATION_MODEL.named.from ? undefined : { family, mount };
}

/** The mount as it was seen is not that of the family that stands first all the same: it stands alone. */
export const mountAgainstFamily =
  ({ families = [] }: Pick<Evidence, 'families'>) =>
  (readings: readonly CountedReading[]): PartDoubt[] => {
    const own = readings.filter(({ kind, word }) => kind === 'mount' && word !== undefined);
    const named = own.length === 0 ? undefined : namedBySizes(readings, families);
    if (named === undefined || own.some(({ word }) => word === named.mount)) return [];
    return askAlone(
      own,
      `${named.family.name} would stand first by the rest, and is of a ${named.mount} mount.`,
    );
  };

/** Nobody looked at the mount, and the family that stands first is of another one than the engine has. */
export const familyAgainstEngine =
  ({ families = [], engine: { mounting, gear = 'pushrod' } }: Pick<Evidence, 'families' | 'engine'>) =>
  (readings: readonly CountedReading[]): PartDoubt[] => {
    const looked = readings.some(({ kind, word }) => kind === 'mount' && word !== undefined);
    if (looked || mounting === undefined || gear !== 'pushrod') return [];
    const named = namedBySizes(readings, families);
    if (named === undefined || named.mount === mounting) return [];
    return [
      {
        code: 'family-against-engine',
        ask: `By what was measured it is ${named.family.name}, of a ${named.mount} mount, and the engine has its rockers on a ${mounting}. What does this part sit on?`,
        knownBy: 'what does a part of that family sit on',
        test: 'look how the part is bored and seated, and enter its mount',
        restsOn: [],
        among: named.family.code,
        choices: [
          choice(
            'other-engine',
            `A ${named.mount}: it is of another engine`,
            'It is told by itself, and not for this engine.',
          ),
          choice('found', `A ${mounting}`, 'Its mount is entered: then it is not of that family.'),
        ],
      },
    ];
  };

/** The mount of the part was seen, and that family has another. */
export const isOfOtherMount = ({ reasons }: Pick<Ranked, 'reasons'>): boolean =>
  reasons.some(({ kind, word }) => kind === 'mount' && word === 'differs');
