import type { TableData } from '../../../views/parts/table.examples.ts';
import type { NoiseCandidate, NoiseDetail } from '../../mechanics/assessment/noise/detail.ts';

const factsSaid = (facts: NoiseCandidate['for']): string => facts.map(({ text }) => text).join('; ');

const upperFirst = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** Every cause with what speaks for it and against it, none left out. */
export const candidatesTable = ({ candidates, howOrdered }: NoiseDetail): TableData => ({
  caption: 'What it may come of',
  columns: [{ label: 'Cause, and who tells of it' }, { label: 'For' }, { label: 'Against' }],
  rows: candidates.map((candidate) => ({
    cells: [
      { text: upperFirst(candidate.said), why: candidate.source },
      factsSaid(candidate.for),
      factsSaid(candidate.against),
    ],
  })),
  note: howOrdered,
});

/** What is not known yet and would part causes, in its order. */
export function checksTable({ checks }: NoiseDetail): TableData[] {
  if (checks.length === 0) return [];
  return [
    {
      caption: 'What would tell them apart, in this order',
      columns: [{ label: 'Asked, seen or read' }, { label: 'Pairs it parts', number: true }],
      rows: checks.map(({ sentence, turns, pairs }) => ({
        cells: [{ text: sentence, why: turns ? 'takes the engine' : 'nothing is turned' }, String(pairs)],
      })),
      note: 'What takes no turning comes first; but a part comes off only once the gap is on record as it was found.',
    },
  ];
}
