import { THREADS } from '../../threads/thread-table.ts';
import { listed } from '../common/said.ts';
import { AS_READ, amongOf, type CountedReading, choice, type PartDoubt, without } from './doubts.ts';
import { sizeName } from './holes.ts';
import { eitherSaid } from './size-said.ts';
import { studOf } from './stud.ts';
import { fitsPitch, readOf, sizeOfReads } from './thread-read.ts';

/** What speaks for the pitch, or for the diameter: the sizes of the hole that have this pitch. */
function withPitch(readings: readonly CountedReading[], holes: readonly string[]): string[] {
  const pitch = readOf(readings, 'stud-pitch');
  if (pitch === undefined || pitch.apart) return [];
  const fits = THREADS.filter((thread) => fitsPitch(thread, sizeOfReads(pitch)));
  return fits.map(({ designation }) => designation).filter((designation) => holes.includes(designation));
}

/** Diameter and pitch of the stud are together no thread: asked which was misread, and whose stud it is. */
export const studNoThread =
  (holeThreads: (readings: readonly CountedReading[]) => readonly string[]) =>
  (readings: readonly CountedReading[]): PartDoubt[] => {
    const stud = studOf(readings);
    if (stud === undefined || stud.apart || stud.lacks !== undefined || stud.named.length > 0) return [];
    const idsOf = (kind: string) => readings.flatMap((each) => (each.kind === kind ? [each.id] : []));
    const ids = [...stud.entryIds].sort();
    const holes = holeThreads(readings);
    const ofHole = withPitch(readings, holes);
    const sizes = [...new Set(holes.map(sizeName))].sort();
    const beside =
      holes.length === 0
        ? ''
        : ofHole.length > 0
          ? ` The hole and the pitch go with ${eitherSaid(ofHole)}.`
          : ` The hole was made for ${eitherSaid(sizes)}.`;
    return [
      {
        code: 'stud-no-thread',
        ask: `${stud.measures}, and ${listed(['diameter', 'pitch'])} are together no ordinary thread of rockers.${beside} Which was misread, or is it the stud of another part?`,
        knownBy: 'diameter and pitch are no thread',
        test: 'slide the stud through the hole by hand, then read it again over the thread near its end, and count the threads again from a crest to a crest',
        restsOn: ids,
        among: amongOf(ids),
        choices: [
          choice('diameter', 'The diameter', 'It does not count; it is read again.'),
          choice('pitch', 'The pitch', 'It does not count; it is counted again.'),
          choice('other-part', 'It is the stud of another part', 'The stud does not count for this part.'),
          { ...AS_READ, label: 'Both read again: they are as they were read' },
        ],
        effect: (now, chosen) => {
          if (chosen === 'diameter') return without(now, idsOf('stud-diameter'));
          if (chosen === 'pitch') return without(now, idsOf('stud-pitch'));
          return chosen === 'other-part' ? without(now, ids) : now;
        },
      },
    ];
  };
