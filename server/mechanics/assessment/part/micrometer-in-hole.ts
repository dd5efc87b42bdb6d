import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import { type CountedReading, choice, MISREAD, type PartDoubt, sized, without } from './doubts.ts';
import { HOLE } from './holes.ts';

/** A micrometer for the outside goes into no hole: by what it was read is asked. It counts meanwhile. */
export const micrometerInHole = (readings: readonly CountedReading[]): PartDoubt[] =>
  sized(readings, HOLE)
    .filter(({ tool }) => tool === 'micrometer')
    .map(({ id, readAs }) => ({
      code: 'micrometer-in-hole',
      ask: `The hole, ${asEntered(readAs)}, is down as read with a micrometer, and one for the outside goes into no hole. What was read?`,
      knownBy: 'what was read with the micrometer',
      test: 'say which tool went into the hole: an inside micrometer, or a small gauge that was then read',
      restsOn: [id],
      choices: [
        choice('inside', 'The hole, by an inside micrometer or a small gauge', 'It counts as it was read.'),
        choice('stud', 'The stud that came out', 'It does not count as a hole; enter it as the stud.'),
        MISREAD,
      ],
      effect: (now, chosen) => (chosen === 'stud' || chosen === 'found' ? without(now, [id]) : now),
    }));
