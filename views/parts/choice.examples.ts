import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

interface ChoiceOption {
  readonly value: string;
  readonly label: string;
  readonly hint?: string;
  readonly checked?: boolean;
  readonly disabled?: boolean;
}

export interface ChoiceData {
  readonly id: string;
  readonly legend: string;
  readonly options: readonly ChoiceOption[];
  readonly name?: string;
  readonly kind?: 'radio' | 'checkbox';
  readonly hint?: string;
  readonly error?: string;
  /** Side by side where there is room; for two or three short answers. */
  readonly inline?: boolean;
  readonly disabled?: boolean;
}

const springs: readonly ChoiceOption[] = [
  { value: 'light', label: 'Light', hint: 'A checking spring, or the inner of a pair alone.' },
  { value: 'running', label: 'Running', hint: 'The spring the engine runs on.' },
  { value: 'unknown', label: 'Not said yet' },
];

export const choice: Part<'/parts/choice'> = {
  name: 'choice',
  title: 'Choice',
  purpose: 'One of several, or several of several, each in words that can be read out.',
  template: '/parts/choice',
  examples: [
    {
      title: 'One of three',
      data: {
        id: 'choice-spring',
        legend: 'Which spring is on the valve?',
        hint: 'Only the light one is set against a stamp.',
        options: springs.map((option) => ({ ...option, checked: option.value === 'light' })),
      },
    },
    {
      title: 'Short answers side by side',
      data: {
        id: 'choice-state',
        legend: 'The engine is',
        inline: true,
        options: [
          { value: 'running', label: 'Running' },
          { value: 'apart', label: 'Apart' },
          { value: 'never', label: 'Not run yet' },
        ],
      },
    },
    {
      title: 'Several of several, one not open',
      data: {
        id: 'choice-found',
        legend: 'What was found?',
        kind: 'checkbox',
        options: [
          { value: 'bent', label: 'Something bent', checked: true },
          { value: 'loose', label: 'Something loose' },
          {
            value: 'metal',
            label: 'Metal in the oil',
            disabled: true,
            hint: 'Asked once the oil is drained.',
          },
        ],
      },
    },
    {
      title: 'Wrong',
      data: {
        id: 'choice-wrong',
        legend: 'Which lifter was used?',
        error: 'No lifter was named. Name one: a sinking lifter changes the reading.',
        options: [
          { value: 'solid', label: 'Solid' },
          { value: 'locked', label: 'Hydraulic, locked solid' },
          { value: 'hydraulic', label: 'Hydraulic' },
        ],
      },
    },
    {
      title: 'Not open now',
      data: {
        id: 'choice-disabled',
        legend: 'Which spring is on the valve?',
        disabled: true,
        options: springs,
      },
    },
    {
      title: 'Long text',
      data: { id: 'choice-long', legend: LONG, options: [{ value: 'a', label: LONG, hint: LONG }] },
    },
    {
      title: 'Hostile text',
      data: {
        id: 'choice-hostile',
        legend: HOSTILE,
        hint: HOSTILE,
        error: HOSTILE,
        options: [{ value: HOSTILE, label: HOSTILE, hint: HOSTILE }],
      },
    },
  ],
};
