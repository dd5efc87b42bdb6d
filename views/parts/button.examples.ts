import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

export interface ButtonData {
  readonly label: string;
  readonly kind?: 'plain' | 'primary' | 'danger';
  /** The key that does the same, shown on the button. */
  readonly key?: string;
  readonly type?: 'submit' | 'button';
  readonly id?: string;
  readonly name?: string;
  readonly value?: string;
  /** The id of a form the button stands outside of. */
  readonly form?: string;
  /** With this the button is a link. */
  readonly href?: string;
  readonly disabled?: boolean;
  /** Why it cannot be pressed now, in a line of its own that the button is described by. */
  readonly why?: { readonly id: string; readonly text: string };
}

export const button: Part<'/parts/button'> = {
  name: 'button',
  title: 'Button',
  purpose: 'Does one thing and says which, as a verb. One primary button on a step.',
  template: '/parts/button',
  examples: [
    { title: 'Primary, with its key', data: { label: 'Save reading', kind: 'primary', key: 'k' } },
    { title: 'Plain, with its key', data: { label: 'Ask for a light spring', key: 'a', type: 'button' } },
    { title: 'A link that looks like one', data: { label: 'Open the next step', href: '#button' } },
    { title: 'Danger', data: { label: 'Lift the stop', kind: 'danger', name: 'act', value: 'lift' } },
    {
      title: 'Not possible now',
      data: {
        label: 'Print report',
        id: 'button-print',
        disabled: true,
        why: { id: 'button-print-why', text: 'Goes on when the lobe lift is in.' },
      },
    },
    { title: 'Long text', data: { label: LONG, type: 'button' } },
    {
      title: 'Hostile text',
      data: { label: HOSTILE, kind: 'primary', type: 'button', id: 'button-hostile' },
    },
  ],
};
