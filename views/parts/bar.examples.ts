import type { ButtonData } from './button.examples.ts';
import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

export interface BarLink {
  readonly href: string;
  readonly label: string;
  /** The key that does the same, shown behind it. */
  readonly key?: string;
}

export interface BarData {
  /** What was entered just now, and the way to put it right. */
  readonly kept?: { readonly text: string; readonly undo?: BarLink };
  /**
   * The one thing worth doing now. With a button where this page does it, and one more where it is done on two; with a
   * link where another step does, in one quiet line.
   */
  readonly next?: {
    readonly sentence: string;
    readonly link?: BarLink;
    readonly button?: ButtonData;
    readonly also?: ButtonData;
  };
  /** The answer in one line, and how many questions are open; it stays in sight. */
  readonly answer?: {
    readonly sentence: string;
    /** What follows it in the same breath, and may take it back, and what it still needs: not kept in sight. */
    readonly rest?: string;
    readonly lacks?: readonly string[];
    /** The way to the first of them. */
    readonly open?: BarLink;
    /** The step that it is the answer of, where that is another: then it is a quiet line, and not kept in sight. */
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
        kept: { text: 'Valve lift, pass 2 .561 in', undo: { href: '#right', label: 'Correct it' } },
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
          link: { label: 'Cam card', href: '#cam', key: 'n' },
        },
      },
    },
    {
      title: 'A photograph first, then an answer on another step',
      data: {
        next: {
          sentence: 'Leave it as it stands: photograph the lobe. Then answer what was found.',
          button: { label: 'Photograph it', href: '#picture', kind: 'plain' },
          link: { label: 'All valves', href: '#sheet', key: 'n' },
        },
        answer: {
          sentence: '5 exhaust: the valve lift is the odd one, .021 in low.',
          link: { label: 'All valves', href: '#sheet' },
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
