import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';
import type { RatioWord } from './verdict.examples.ts';

export interface CandidateData {
  readonly name: string;
  /** The probability as it is read out, `46 %`; left out while no family is named. */
  readonly share?: string;
  /** The same for the bar, 0 to 100. */
  readonly percent?: number;
  /** What the family is and what its share means. */
  readonly words: string;
  readonly href?: string;
  readonly reasons: readonly { readonly verdict?: RatioWord; readonly text: string }[];
}

export interface CandidatesData {
  readonly id: string;
  readonly title: string;
  readonly intro?: string;
  readonly candidates: readonly CandidateData[];
  readonly note?: string;
  readonly live?: boolean;
}

export const candidates: Part<'/parts/candidates'> = {
  name: 'candidates',
  title: 'Ranked families',
  purpose: 'Which family a part may be, how likely each is, and which readings speak for and against it.',
  template: '/parts/candidates',
  examples: [
    {
      title: 'Two that are close, and none of these',
      data: {
        id: 'candidates-close',
        title: 'What it may be',
        intro: 'From 4 readings against 69 families. Demo data, invented.',
        candidates: [
          {
            name: 'Sorrel 155-B',
            share: '66 %',
            percent: 66,
            words: 'Likely. Nominal ratio 1.55; small V8, valves in line.',
            href: '#sorrel',
            reasons: [
              { verdict: 'agrees', text: 'hole .4355 in against .4375 in' },
              { verdict: 'cannot-tell', text: 'pivot to cup .950 in against .933 in' },
            ],
          },
          {
            name: 'Sorrel 150-B',
            share: '31 %',
            percent: 31,
            words: 'Possible. Nominal ratio 1.50; small V8, valves in line.',
            reasons: [{ verdict: 'differs', text: 'width 1.420 in against 1.600 in' }],
          },
          { name: 'None of these', share: '3 %', percent: 3, words: 'Unlikely.', reasons: [] },
        ],
        note: 'A ratio in the catalogue is nominal; only a valve proves one.',
      },
    },
    {
      title: 'No family is named yet',
      data: {
        id: 'candidates-open',
        title: 'What it may be',
        candidates: [
          { name: 'Sorrel 155-B', words: 'Nominal ratio 1.55; small V8, valves in line.', reasons: [] },
          { name: 'None of these', words: 'A part that is in no line of the catalogue.', reasons: [] },
        ],
        note: 'While no family is named no chance stands beside one.',
      },
    },
    {
      title: 'Long and hostile text',
      data: {
        id: 'candidates-hostile',
        title: HOSTILE,
        intro: LONG,
        candidates: [
          {
            name: HOSTILE,
            share: '<b>',
            percent: 100,
            words: LONG,
            href: '#"onclick="x',
            reasons: [{ verdict: 'agrees', text: HOSTILE }, { text: LONG }],
          },
        ],
        note: HOSTILE,
      },
    },
  ],
};
