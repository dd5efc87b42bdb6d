import { defined } from '../../../../shared/defined.ts';
import { computation as fastenerForHole } from '../../computations/fastener-for-hole.ts';
import type { Headline } from '../assessment.ts';
import { listed } from '../common/said.ts';
import type { PartEvidence } from '../evidence.ts';
import type { HoleDetail } from './detail.ts';

type Thread = HoleDetail['threads'][number];

function fitOf(threads: readonly Thread[]): Pick<HoleDetail, 'word' | 'said'> {
  if (threads.some(({ fit }) => fit === 'agrees'))
    return { word: 'agrees', said: 'with the size it was made for, read a little small or large.' };
  return threads.length > 0
    ? { word: 'cannot-tell', said: 'between sizes: try the stud or a drill shank by hand.' }
    : { word: 'differs', said: 'from every size that rockers are made for.' };
}

/** What each reading of the hole says of the stud or bolt. */
export const holesOf = (readings: readonly PartEvidence[]): HoleDetail[] =>
  readings.flatMap(({ id, kind, readAs, size }) => {
    if (kind !== 'hole-across-trunnion' || size === undefined) return [];
    const given = { hole: size };
    const result = fastenerForHole.compute(given);
    const threads = result.fasteners.flatMap(({ designation, fit }) =>
      fit === 'differs' ? [] : [{ designation, fit }],
    );
    return [
      {
        entryId: id,
        readAs,
        ...fitOf(threads),
        threads,
        ...defined({ ask: result.ask }),
        cautions: fastenerForHole.cautions(given, result),
      },
    ];
  });

/** Threads that agree, or else all in reach of the reading. */
export function namedThreads({ threads }: HoleDetail): string[] {
  const agreeing = threads.filter(({ fit }) => fit === 'agrees');
  return (agreeing.length > 0 ? agreeing : threads).map(({ designation }) => designation);
}

/** The hole suggests a fastener; its thread decides. */
export function holeHeadline(holes: readonly HoleDetail[]): Headline[] {
  const once = [...new Set(holes.flatMap(namedThreads))].sort();
  if (once.length === 0) return [];
  return [
    {
      id: 'headline:part:fastener',
      about: { of: 'part' },
      step: 'identify',
      sentence: `The hole suggests ${listed(once).replace(' and ', ' or ')}; the thread proves it.`,
    },
  ];
}
