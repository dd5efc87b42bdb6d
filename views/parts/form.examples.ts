import type { ButtonData } from './button.examples.ts';
import type { Component } from './components.ts';
import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

export interface FormGroup {
  readonly slots: readonly Component[];
  readonly legend?: string;
  readonly hint?: string;
  /** Short fields side by side where there is room. */
  readonly columns?: boolean;
  /** One tap away under its legend; `open` where something in it came back with a fault. */
  readonly fold?: 'shut' | 'open';
  /** Stands beside the group before or after it that is a half too, where there is room. */
  readonly half?: boolean;
}

export interface FormData {
  readonly action: string;
  readonly buttons: readonly ButtonData[];
  readonly id?: string;
  readonly title?: string;
  readonly method?: 'post' | 'get';
  /** Makes a double click count once. */
  readonly key?: string;
  readonly hidden?: Readonly<Record<string, string>>;
  readonly upload?: boolean;
  /** Untouched, it makes room for the page that the call has gone on to. */
  readonly givesWay?: boolean;
  /** The choice that says what is kept: what is picked of it stands beside the buttons. */
  readonly keeps?: string;
  /** Either groups, or slots for a form without them. */
  readonly groups?: readonly FormGroup[];
  readonly slots?: readonly Component[];
}

const lift = (id: string, label: string): Component => ({
  template: '/parts/field',
  data: { id, label, unit: 'in', echo: '' },
});

export const form: Part<'/parts/form'> = {
  name: 'form',
  title: 'Form',
  purpose: 'Fields that are kept together, and the buttons that keep them.',
  template: '/parts/form',
  examples: [
    {
      title: 'One group',
      data: {
        action: '#kept',
        key: 'demo-key',
        title: 'Valve lift',
        slots: [lift('form-lift', 'Valve lift'), lift('form-lash', 'Lash')],
        buttons: [{ label: 'Save reading', kind: 'primary', key: 'k' }],
      },
    },
    {
      title: 'Two groups, side by side',
      data: {
        action: '#kept',
        groups: [
          {
            legend: 'Lobe lift',
            hint: 'Three passes at the lifter.',
            columns: true,
            slots: [
              lift('form-lobe-1', 'First'),
              lift('form-lobe-2', 'Second'),
              lift('form-lobe-3', 'Third'),
            ],
          },
          { legend: 'Valve lift', columns: true, slots: [lift('form-valve', 'At full lift')] },
        ],
        buttons: [
          { label: 'Save readings', kind: 'primary' },
          { label: 'Leave it', href: '#form' },
        ],
      },
    },
    {
      title: 'Long and hostile text',
      data: {
        action: '#"onclick="x',
        key: HOSTILE,
        title: LONG,
        hidden: { 'a"onclick="x': HOSTILE },
        groups: [{ legend: HOSTILE, hint: HOSTILE, slots: [] }],
        buttons: [{ label: HOSTILE }],
      },
    },
  ],
};
