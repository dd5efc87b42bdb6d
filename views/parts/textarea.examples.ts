import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

export interface TextareaData {
  readonly id: string;
  readonly label: string;
  readonly value?: string;
  readonly name?: string;
  readonly hint?: string;
  readonly error?: string;
  readonly rows?: number;
  readonly optional?: boolean;
  readonly disabled?: boolean;
}

export const textarea: Part<'/parts/textarea'> = {
  name: 'textarea',
  title: 'Longer words',
  purpose: 'What the caller said, word for word.',
  template: '/parts/textarea',
  examples: [
    {
      title: 'Empty',
      data: { id: 'textarea-empty', label: 'In the caller’s words', hint: 'As said, not as meant.' },
    },
    {
      title: 'Filled',
      data: {
        id: 'textarea-filled',
        label: 'Why the stop is lifted',
        value: 'Pushrod 5 intake changed.\nTurned twice by hand, no resistance.',
        rows: 3,
      },
    },
    {
      title: 'Wrong',
      data: {
        id: 'textarea-wrong',
        label: 'Why the stop is lifted',
        error: 'No reason was given. A stop is lifted with a reason of at least one sentence.',
      },
    },
    {
      title: 'Not open now',
      data: { id: 'textarea-disabled', label: 'Note', disabled: true, value: 'Call closed.' },
    },
    { title: 'Long text', data: { id: 'textarea-long', label: LONG, value: LONG, optional: true } },
    {
      title: 'Hostile text',
      data: {
        id: 'textarea-hostile',
        label: HOSTILE,
        hint: HOSTILE,
        error: HOSTILE,
        value: `</textarea>${HOSTILE}`,
      },
    },
  ],
};
