import { THREADS } from '../../threads/thread-table.ts';
import { listed } from '../common/said.ts';
import { amongOf, type CountedReading, choice, type PartDoubt, without } from './doubts.ts';
import { sizeName } from './holes.ts';
import { eitherSaid } from './size-said.ts';
import { studOf } from './stud.ts';

/* A box that names a stud, against the stud that came out or the hole: common practice, no published source. */

const SIZES: ReadonlySet<string> = new Set(THREADS.map(({ size }) => size));

/** The studs that a label names: `7/16`, and `M8` of `M8 x 1.25`; a fraction that is no stud of rockers is none. */
function studsNamed(label: string): string[] {
  const named = [...label.matchAll(/(?<![\d/])(\d+\/\d+)(?![\d/])|(?<![a-z0-9])m\s?(\d+)(?!\d)/gi)].map(
    ([, fraction, metric]) => fraction ?? `M${metric ?? ''}`,
  );
  return [...new Set(named)].filter((size) => SIZES.has(size)).sort();
}

/** What the part takes, as it was measured, and of what. */
function measuredOf(
  readings: readonly CountedReading[],
  holeThreads: (readings: readonly CountedReading[]) => readonly string[],
): { readonly sizes: readonly string[]; readonly by: string } | undefined {
  const stud = studOf(readings);
  const ofHole = [...new Set(holeThreads(readings).map(sizeName))].sort();
  if (ofHole.length > 0) return { sizes: ofHole, by: 'the hole was made for' };
  if (stud === undefined || stud.apart || !stud.by.includes('diameter') || stud.named.length === 0)
    return undefined;
  return { sizes: [...new Set(stud.named.map(sizeName))].sort(), by: 'the stud that came out is' };
}

/** A box that names another stud than the part takes: the wrong part was packed, or it is another part’s box. */
export const boxAgainstStud =
  (holeThreads: (readings: readonly CountedReading[]) => readonly string[]) =>
  (readings: readonly CountedReading[]): PartDoubt[] => {
    const measured = measuredOf(readings, holeThreads);
    if (measured === undefined) return [];
    return readings
      .filter(({ kind }) => kind === 'box-label')
      .flatMap(({ id, typed }): PartDoubt[] => {
        const named = studsNamed(typed);
        if (named.length === 0 || named.some((size) => measured.sizes.includes(size))) return [];
        return [
          {
            code: 'box-against-stud',
            ask: `The box says “${typed.trim()}”, and ${measured.by} ${eitherSaid(measured.sizes)}. Is it the box of this part?`,
            knownBy: 'is it the box of a part for that stud',
            size: `The box names ${listed(named)}.`,
            test: 'ask where the box came from, and slide a stud of either size through the hole by hand',
            restsOn: [id],
            among: amongOf([id]),
            choices: [
              choice('found', 'No, it is of another part', 'The box does not count for this part.'),
              choice(
                'wrong-in-box',
                'Yes: that part came in that box',
                'It is the wrong part for what was ordered: it is not put on the stud that the box names, and whoever packed it is told.',
              ),
              choice(
                'not-found',
                'Yes, and the hole or the stud was measured wrong',
                'What does not go with the box is measured again.',
              ),
            ],
            effect: (now, chosen) => (chosen === 'found' ? without(now, [id]) : now),
          },
        ];
      });
  };
