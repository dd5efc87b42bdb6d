import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

export interface ErrorSummaryData {
  readonly title?: string;
  readonly errors: readonly { readonly text: string; readonly field?: string }[];
  /** Only where several stand on one page. */
  readonly id?: string;
}

export const errorSummary: Part<'/parts/error-summary'> = {
  name: 'error-summary',
  title: 'What to put right',
  purpose:
    'Stands above the heading after a form came back; gets the focus; names each field and leads to it.',
  template: '/parts/error-summary',
  examples: [
    {
      title: 'Two fields',
      data: {
        errors: [
          {
            field: 'field-wrong',
            text: 'Hole across the trunnion is 4355 in. Between .200 and .750 in is allowed. Is it .4355?',
          },
          {
            field: 'choice-wrong',
            text: 'No lifter was named. Name one: a sinking lifter changes the reading.',
          },
        ],
      },
    },
    {
      title: 'No field to lead to',
      data: {
        id: 'errors-whole',
        title: 'Not kept: someone else was first',
        errors: [{ text: 'The builder changed this valve at 10:42. Both entries are shown below.' }],
      },
    },
    {
      title: 'Long text',
      data: { id: 'errors-long', title: LONG, errors: [{ field: 'field-long', text: LONG }] },
    },
    {
      title: 'Hostile text',
      data: {
        id: 'errors-hostile',
        title: HOSTILE,
        errors: [{ field: `field-hostile" onclick="x`, text: HOSTILE }],
      },
    },
  ],
};
