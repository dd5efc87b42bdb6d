import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import { halfWidthOf } from '../../identify/how-read.ts';
import { THREADS } from '../../threads/thread-table.ts';
import { listed } from '../common/said.ts';
import { AS_READ, amongOf, type CountedReading, choice, type PartDoubt, sized, without } from './doubts.ts';
import { sizeName } from './holes.ts';
import { eitherSaid, sizeSaid } from './size-said.ts';
import { studOf } from './stud.ts';
import { fitsPitch, goTogether, readsOf } from './thread-read.ts';

/** Crests were counted where the gaps between them count: one fewer pitch goes into the length. */
export const crestsCounted = (readings: readonly CountedReading[]): PartDoubt[] =>
  sized(readings, 'stud-pitch').flatMap((each): PartDoubt[] => {
    const { id, count, size } = each;
    if (count === undefined || count < 3) return [];
    const at = (threads: number) => ({ value: size / threads, within: halfWidthOf(each) / threads });
    const fits = (threads: number) => THREADS.some((thread) => fitsPitch(thread, at(threads)));
    if (fits(count) || !fits(count - 1)) return [];
    const says = readsOf(
      readings.filter((other) => other.id !== id),
      'stud-pitch',
    ).find((other) => goTogether('stud-pitch')({ ...other, ...at(count - 1) }, other));
    return [
      {
        code: 'crests-counted',
        ask: `${asEntered(each.readAs)} is no thread of rockers; ${count - 1} over it would be. Were the crests counted, the first one too?`,
        ...(says === undefined
          ? {}
          : {
              size: `The other reading of the pitch, ${asEntered(says.readAs)}, says the same: it counts meanwhile.`,
            }),
        test: 'count from one crest to the next as one, and lay the rule on crests at both ends',
        restsOn: [id],
        choices: [
          choice('crests', 'Yes, crests were counted', `It counts as ${count - 1} over ${sizeSaid(size)}.`),
          AS_READ,
        ],
        effect: (now, chosen) =>
          chosen === 'crests'
            ? now.map((other) =>
                other.id === id
                  ? { ...other, count: count - 1, countsAs: `${count - 1} over ${sizeSaid(size)}` }
                  : other,
              )
            : // Another reading says the same: the two do not contradict each other, and this one waits.
              chosen === undefined && says !== undefined
              ? without(now, [id])
              : now,
      },
    ];
  });

/** A stud, or what was read of one, that the hole does not go with: asked whether it is this part's. */
export const studAgainstHole =
  (holeThreads: (readings: readonly CountedReading[]) => readonly string[]) =>
  (readings: readonly CountedReading[]): PartDoubt[] => {
    const stud = studOf(readings);
    const holes = holeThreads(readings);
    if (stud === undefined || stud.apart || stud.named.length === 0 || holes.length === 0) return [];
    const whole = stud.lacks === undefined;
    // Of a stud that was only counted the pitch alone speaks; one that was measured has a size of its own.
    const by = (designation: string) => (stud.by.includes('diameter') ? sizeName(designation) : designation);
    const made = new Set(holes.map(by));
    if (stud.named.some((designation) => made.has(by(designation)))) return [];
    const ids = [...stud.entryIds].sort();
    const sizes = [...new Set(holes.map(sizeName))].sort();
    const said = whole ? 'The stud that came out' : `By its ${listed(stud.by)} the stud that came out`;
    return [
      {
        code: 'stud-against-hole',
        ask: `${said} is ${eitherSaid(stud.named)}, and the hole was made for ${eitherSaid(sizes)}. Is it the stud of this part?`,
        test: 'slide the stud through the hole by hand',
        restsOn: ids,
        among: amongOf(ids),
        choices: [
          choice('found', 'No, it is of another part', 'The stud does not count for this part.'),
          choice(
            'not-found',
            'Yes, it is',
            'Both count as they were read; the part is not put on that stud.',
          ),
        ],
        effect: (now, chosen) => (chosen === 'found' ? without(now, ids) : now),
      },
    ];
  };
