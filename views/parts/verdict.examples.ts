import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

export type RatioWord = 'agrees' | 'differs' | 'cannot-tell';
export type GapWord = 'clear' | 'close' | 'short';

export interface VerdictData {
  readonly word: RatioWord | GapWord;
  readonly text?: string;
  /** Word and mark alone, for a table or a line of the tape. */
  readonly small?: boolean;
}

export const verdict: Part<'/parts/verdict'> = {
  name: 'verdict',
  title: 'Verdict',
  purpose:
    'The word, a mark that draws the comparison, and a hatch. The denser the hatch, the less can be said for it.',
  template: '/parts/verdict',
  examples: [
    {
      title: 'agrees',
      data: { word: 'agrees', text: 'with the 1.75 stamped on it.' },
    },
    {
      title: 'cannot tell',
      data: { word: 'cannot-tell', text: 'whether it agrees with the 1.7 stamped on it or is over.' },
    },
    { title: 'differs', data: { word: 'differs', text: 'from the 1.6 stamped on it: 3 % over.' } },
    { title: 'clear', data: { word: 'clear', text: 'by .018 in beyond the uncertainty.' } },
    { title: 'close', data: { word: 'close', text: 'cannot be told from the limit within ± .006 in.' } },
    { title: 'short', data: { word: 'short', text: 'by .019 in. Stop, and have a qualified shop look.' } },
    { title: 'Small', data: { word: 'short', small: true } },
    { title: 'Long text', data: { word: 'close', text: LONG } },
    { title: 'Hostile text', data: { word: 'clear', text: HOSTILE } },
  ],
};
