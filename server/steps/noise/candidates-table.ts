import type { TableData } from '../../../views/parts/table.examples.ts';
import type { NoiseCandidate, NoiseDetail } from '../../mechanics/assessment/noise/detail.ts';

const upperFirst = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** The facts by their numbers: `1, 3`. */
function numbersOf({ facts }: NoiseDetail, own: NoiseCandidate['for']): string {
  return own.map(({ key }) => facts.findIndex((fact) => fact.key === key) + 1).join(', ');
}

/** What speaks for or against a cause, each under the number that the causes name it by. */
export function factsTable({ facts }: NoiseDetail): TableData[] {
  if (facts.length === 0) return [];
  return [
    {
      caption: 'Facts on record, by number',
      columns: [{ label: 'No.' }, { label: 'Fact' }],
      rows: facts.map(({ text }, index) => ({ cells: [String(index + 1), text] })),
    },
  ];
}

/** Every cause with what speaks for it and against it, none left out. */
export const candidatesTable = (noise: NoiseDetail): TableData => ({
  caption: 'What it may come of',
  columns: [
    { label: 'Cause' },
    { label: 'Facts for' },
    { label: 'Facts against' },
    { label: 'Who tells of it' },
  ],
  rows: noise.candidates.map((candidate) => ({
    cells: [
      upperFirst(candidate.said),
      numbersOf(noise, candidate.for),
      numbersOf(noise, candidate.against),
      candidate.source,
    ],
  })),
  note: noise.howOrdered,
});

/** It parts no two causes by itself: which of them there can be goes by it. */
const FIRST = 'says what is asked';

/** What is not known yet and would part causes, in its order. */
export function checksTable({ checks }: NoiseDetail): TableData[] {
  if (checks.length === 0) return [];
  return [
    {
      caption: 'What would tell them apart, in this order',
      columns: [{ label: 'To find out' }, { label: 'How' }, { label: 'Pairs told apart', number: true }],
      rows: checks.map(({ sentence, how, pairs }) => ({
        cells: [sentence, how, pairs === 0 ? FIRST : String(pairs)],
      })),
      note: 'What takes no turning comes first; but a part comes off only once the gap is on record as it was found.',
    },
  ];
}
