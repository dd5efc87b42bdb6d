import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import { IDENTIFICATION_MODEL } from '../../identify/model.ts';
import { IN } from '../../kit/si.ts';
import { CANDIDATES } from '../../threads/hole-fit.ts';
import { inches } from '../common/said.ts';
import { amongOf, type CountedReading, choice, type PartDoubt, sized, without } from './doubts.ts';
import { HOLE } from './holes.ts';

/** What was tried through a hole goes before a caliper; where it is further off than one reads, one of them is wrong. */
export const triedAgainstHole = (readings: readonly CountedReading[]): PartDoubt[] =>
  sized(readings, HOLE).flatMap(({ id, size, tried, readAs }): PartDoubt[] => {
    const made = CANDIDATES.find(({ thread }) => thread.size === tried)?.nominalHole;
    if (tried === undefined || made === undefined) return [];
    const off = made - size;
    if (Math.abs(off) <= IDENTIFICATION_MODEL.sizes[HOLE].apart * IN) return [];
    return [
      {
        code: 'tried-against-hole',
        ask: `A ${tried} went through without play, and the hole reads ${asEntered(readAs)}: ${inches(Math.abs(off))} ${off > 0 ? 'under' : 'over'} a hole for it. Which of the two was read wrong?`,
        knownBy: 'was the hole or what was tried through it read wrong',
        test: 'read the hole once more, turned a quarter turn, and the stud or shank itself with the caliper',
        restsOn: [id],
        among: amongOf([id]),
        choices: [
          choice('hole', 'The hole', 'That reading does not count; it is read again.'),
          choice(
            'tried',
            'What was tried through it was another size',
            'It does not count; it is tried again.',
          ),
          choice('not-found', 'Neither: both read again, it is so', 'Both stay on the record.'),
        ],
        effect: (now, chosen) => {
          if (chosen === 'hole') return without(now, [id]);
          return chosen === 'tried'
            ? now.map(({ tried: wrong, ...each }) =>
                each.id === id || wrong === undefined ? each : { ...each, tried: wrong },
              )
            : now;
        },
      },
    ];
  });
