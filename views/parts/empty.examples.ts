import type { ButtonData } from './button.examples.ts';
import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

export interface EmptyData {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly action?: ButtonData;
}

export const empty: Part<'/parts/empty'> = {
  name: 'empty',
  title: 'Empty page',
  purpose: 'Says what goes here and offers the first action.',
  template: '/parts/empty',
  examples: [
    {
      title: 'With an action',
      data: {
        id: 'empty-calls',
        title: 'No call yet today',
        text: 'A call ties the caller, the goal and the build together.',
        action: { label: 'Open a call', kind: 'primary', key: 'c', href: '#open' },
      },
    },
    {
      title: 'Without',
      data: { id: 'empty-lots', title: 'No lot on hold', text: 'A lot stands here from the day it is held.' },
    },
    {
      title: 'Long and hostile text',
      data: { id: 'empty-hostile', title: HOSTILE, text: `${LONG} ${HOSTILE}` },
    },
  ],
};
