import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

export interface NoticeData {
  readonly kind?: 'note' | 'caution' | 'offline';
  readonly text: string;
  readonly id?: string;
  readonly link?: { readonly href: string; readonly label: string };
}

export const notice: Part<'/parts/notice'> = {
  name: 'notice',
  title: 'Notice',
  purpose: 'One line beside the step: a caution, a note, or that the line is down.',
  template: '/parts/notice',
  examples: [
    {
      title: 'Caution',
      data: {
        kind: 'caution',
        text: 'turn by hand at the crank bolt only. Any resistance: stop, back off, find out.',
      },
    },
    {
      title: 'Note',
      data: {
        text: 'This ratio is with the running spring. It cannot be set against a stamp.',
        link: { href: '#light', label: 'Ask for a light spring' },
      },
    },
    {
      title: 'Offline',
      data: {
        kind: 'offline',
        text: 'No connection. What you type stays here and goes out when the line is back.',
      },
    },
    { title: 'Long text', data: { kind: 'caution', text: LONG } },
    { title: 'Hostile text', data: { text: HOSTILE, link: { href: '#"onclick="x', label: HOSTILE } } },
  ],
};
