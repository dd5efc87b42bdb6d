import type { ButtonData } from './button.examples.ts';
import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

export interface BarLink {
  readonly href: string;
  readonly label: string;
}

export interface BarData {
  /** What was entered just now, and the way to put it right. */
  readonly kept?: { readonly text: string; readonly undo?: BarLink };
  /** The one thing worth doing now; a button where it is done on another page, and one more where it is done on two. */
  readonly next?: {
    readonly sentence: string;
    readonly button?: ButtonData;
    readonly also?: ButtonData;
  };
  /** The answer in one line, and how many questions are open; it stays in sight. */
  readonly answer?: {
    readonly sentence: string;
    /** What follows it in the same breath, and what it still needs: below it, and not kept in sight. */
    readonly rest?: string;
    readonly lacks?: readonly string[];
    /** The way to the first of them. */
    readonly open?: BarLink;
    readonly link?: BarLink;
  };
}

export const bar: Part<'/parts/bar'> = {
  name: 'bar',
  title: 'First lines of a step',
  purpose: 'What was kept, what is next and the answer: seen without scrolling, the answer always.',
  template: '/parts/bar',
  examples: [
    {
      title: 'After a reading was kept',
      data: {
        kept: { text: 'Valve lift, pass 2 .561 in', undo: { href: '#right', label: 'Put it right' } },
        next: { sentence: 'Take one more pass.' },
        answer: {
          sentence: '1.747 ± .006 on a light spring: a 1.75.',
          open: { label: '1 question open', href: '#question-0' },
        },
      },
    },
    {
      title: 'What is next is done on another step',
      data: {
        next: {
          sentence: 'Enter the lobe lift of the cam card.',
          button: { label: 'Cam card', href: '#cam', key: 'n' },
        },
      },
    },
    {
      title: 'A photograph first, then an answer on another step',
      data: {
        next: {
          sentence: 'Leave it as it stands: photograph the lobe. Then answer what was found.',
          button: { label: 'Photograph it', href: '#picture', kind: 'primary' },
          also: { label: 'All valves', href: '#sheet', key: 'n' },
        },
      },
    },
    {
      title: 'Long and hostile text',
      data: {
        kept: { text: HOSTILE, undo: { href: '#"onclick="x', label: HOSTILE } },
        next: { sentence: LONG, button: { label: LONG, type: 'button' } },
        answer: {
          sentence: `${LONG} ${HOSTILE}`,
          rest: HOSTILE,
          lacks: [LONG, HOSTILE],
          open: { label: HOSTILE, href: '#hostile' },
          link: { href: '#', label: LONG },
        },
      },
    },
  ],
};
