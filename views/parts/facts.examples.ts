import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

export interface Fact {
  readonly label: string;
  readonly value: string;
  readonly note?: string;
}

export interface FactsData {
  readonly items: readonly Fact[];
  /** As the title block of a drawing. */
  readonly block?: boolean;
}

export const callFacts: readonly Fact[] = [
  { label: 'Call', value: '1042' },
  { label: 'Valve', value: '5 intake' },
  { label: 'Spring', value: 'light' },
  { label: 'Lifter', value: 'solid' },
  { label: 'Build revision', value: '3' },
];

export const facts: Part<'/parts/facts'> = {
  name: 'facts',
  title: 'Facts',
  purpose: 'Names and entries, as a list or as the title block of a drawing.',
  template: '/parts/facts',
  examples: [
    {
      title: 'List',
      data: {
        items: [
          { label: 'Ratio stamp', value: '1.75', note: 'on the body, word for word' },
          { label: 'Other number', value: 'K 7' },
          { label: 'Box label', value: 'not said yet' },
        ],
      },
    },
    { title: 'Title block', data: { block: true, items: callFacts } },
    {
      title: 'Long and hostile text',
      data: {
        block: true,
        items: [
          { label: LONG, value: LONG },
          { label: HOSTILE, value: HOSTILE, note: HOSTILE },
        ],
      },
    },
  ],
};
