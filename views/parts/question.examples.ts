import type { ButtonData } from './button.examples.ts';
import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

export interface QuestionData {
  readonly id: string;
  readonly words: string;
  readonly about?: string;
  /** How much it would change, in figures. */
  readonly size?: string;
  readonly test: string;
  readonly answers: readonly ButtonData[];
  readonly answered?: { readonly text: string; readonly who: string; readonly when: string };
}

export const question: Part<'/parts/question'> = {
  name: 'question',
  title: 'Question card',
  purpose: 'Asks where a verdict would be too much, says how much hangs on it and what settles it.',
  template: '/parts/question',
  examples: [
    {
      title: 'Open',
      data: {
        id: 'question-turn',
        about: 'cylinder 5 intake',
        words: 'Could one turn of the dial be missing?',
        size: 'The lift reads .466 in. One turn more, .566 in, would make the light ratio 1.747.',
        test: 'read the small hand at full lift again.',
        answers: [
          { label: 'Take the reading again', key: 'r', type: 'button' },
          { label: 'Keep it as read', key: 'e', type: 'button' },
        ],
      },
    },
    {
      title: 'Answered',
      data: {
        id: 'question-answered',
        about: 'cylinder 5 intake',
        words: 'Could one turn of the dial be missing?',
        test: 'read the small hand at full lift again.',
        answers: [],
        answered: { text: 'Yes: the small hand stands at 5.', who: 'Builder', when: '10:42' },
      },
    },
    {
      title: 'Long text',
      data: {
        id: 'question-long',
        words: LONG,
        size: LONG,
        test: LONG,
        answers: [{ label: LONG, type: 'button' }],
      },
    },
    {
      title: 'Hostile text',
      data: {
        id: 'question-hostile',
        about: HOSTILE,
        words: HOSTILE,
        size: HOSTILE,
        test: HOSTILE,
        answers: [{ label: HOSTILE, key: '"', type: 'button' }],
      },
    },
  ],
};
