import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

export interface SelectData {
  readonly id: string;
  readonly label: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly value?: string;
  readonly name?: string;
  readonly hint?: string;
  readonly error?: string;
  readonly optional?: boolean;
  readonly disabled?: boolean;
}

const mounts = [
  { value: '', label: 'Not said yet' },
  { value: 'stud', label: 'Stud' },
  { value: 'pedestal', label: 'Pedestal' },
  { value: 'shaft', label: 'Shaft' },
];

export const select: Part<'/parts/select'> = {
  name: 'select',
  title: 'List to pick from',
  purpose: 'One of many, where a choice laid open would be longer than the screen.',
  template: '/parts/select',
  examples: [
    { title: 'Nothing picked', data: { id: 'select-empty', label: 'Mounting', options: mounts } },
    { title: 'Picked', data: { id: 'select-stud', label: 'Mounting', options: mounts, value: 'stud' } },
    {
      title: 'Wrong',
      data: {
        id: 'select-wrong',
        label: 'Mounting',
        options: mounts,
        error: 'Mounting is not said. Pick stud, pedestal or shaft.',
      },
    },
    {
      title: 'Not open now',
      data: { id: 'select-disabled', label: 'Mounting', options: mounts, disabled: true },
    },
    {
      title: 'Long text',
      data: { id: 'select-long', label: LONG, options: [{ value: 'a', label: LONG }], optional: true },
    },
    {
      title: 'Hostile text',
      data: {
        id: 'select-hostile',
        label: HOSTILE,
        hint: HOSTILE,
        options: [{ value: HOSTILE, label: HOSTILE }],
        value: HOSTILE,
      },
    },
  ],
};
