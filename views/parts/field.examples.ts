import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

/** What an entry can be read as, with the name that the pick is sent under. */
export interface PossibleReadings {
  readonly id: string;
  readonly name: string;
  readonly readings: readonly { readonly value: string; readonly label: string; readonly picked: boolean }[];
}

export interface FieldData {
  readonly id: string;
  readonly label: string;
  /** Which of several readings it is, large before the label; it follows what is picked of a form's `keeps`. */
  readonly names?: string;
  /** Taken from the id when it is left out. */
  readonly name?: string;
  readonly hint?: string;
  /** The unit that counts when none is typed. */
  readonly unit?: string;
  /** What was typed, byte for byte. */
  readonly value?: string;
  /** Present, even empty: there is a line below that says how the entry was read. */
  readonly echo?: string;
  /** What kind of quantity the live answer should read it as. */
  readonly reads?: string;
  /** It may lie between two gauges, and such an entry is long. */
  readonly between?: boolean;
  /** On a phone it has the whole width. */
  readonly wide?: boolean;
  /** Travel of the dial per turn, such as `0.1 in`, where turns may be typed. */
  readonly perTurn?: string;
  /** What it can be: least and most in SI, and 0 where none is an answer too. */
  readonly canBe?: string;
  readonly error?: string;
  /** What the entry can be read as, to pick from. */
  readonly asks?: PossibleReadings;
  readonly other?: { readonly who: string; readonly value: string; readonly when: string };
  readonly optional?: boolean;
  readonly big?: boolean;
  readonly autofocus?: boolean;
  readonly disabled?: boolean;
  readonly type?: 'text' | 'date' | 'password' | 'email' | 'tel' | 'search';
  readonly autocomplete?: string;
  readonly inputmode?: 'text' | 'decimal' | 'numeric';
}

export const field: Part<'/parts/field'> = {
  name: 'field',
  title: 'Field',
  purpose: 'Takes one entry in whatever way it is spoken or typed, and says how it was read.',
  template: '/parts/field',
  examples: [
    {
      title: 'Empty',
      data: {
        id: 'field-empty',
        label: 'Valve lift',
        unit: 'in',
        echo: '',
        hint: 'Turns first, then the needle: “5 turns 66”.',
      },
    },
    {
      title: 'Read and echoed',
      data: {
        id: 'field-echo',
        label: 'Valve lift',
        unit: 'in',
        value: '5 turns 66',
        echo: '5 turns 66 = .566 in',
        reads: 'length',
        perTurn: '0.1 in',
      },
    },
    {
      title: 'Large, for the bench',
      data: {
        id: 'field-big',
        label: 'Lobe lift at the lifter',
        unit: 'in',
        value: '.324',
        echo: '.324 in',
        big: true,
      },
    },
    {
      title: 'Wrong',
      data: {
        id: 'field-wrong',
        label: 'Hole across the trunnion',
        unit: 'in',
        value: '4355',
        error: 'Hole across the trunnion is 4355 in. Between .200 and .750 in is allowed. Is it .4355?',
        echo: '4355 in',
      },
    },
    {
      title: 'Asked which it is',
      data: {
        id: 'field-asked',
        label: 'Lobe lift',
        unit: 'in',
        value: '12.24',
        error: 'Lobe lift came as 12.24 without a unit. Is it 12.24 mm? Pick it, or write it with its unit',
        asks: {
          id: 'field-asked-as',
          name: 'lobeLift~as',
          readings: [{ value: '12.24 mm', label: '12.24 mm', picked: false }],
        },
        echo: '',
      },
    },
    {
      title: 'The other side has entered something else',
      data: {
        id: 'field-other',
        label: 'Lash',
        unit: 'in',
        value: '.018',
        echo: '.018 in',
        other: { who: 'The builder', value: '.020 in', when: 'at 10:42' },
      },
    },
    { title: 'Optional, no unit', data: { id: 'field-optional', label: 'Ratio stamp', optional: true } },
    {
      title: 'Not open now',
      data: {
        id: 'field-disabled',
        label: 'Piston-to-valve gap',
        unit: 'in',
        disabled: true,
        hint: 'Opens when the stop is lifted.',
      },
    },
    {
      title: 'Password',
      data: {
        id: 'field-password',
        label: 'Password',
        type: 'password',
        autocomplete: 'current-password',
      },
    },
    {
      title: 'One of several readings',
      data: {
        id: 'field-named',
        names: 'Lobe lift 1 intake, pass 1',
        label: 'Reading at full lift',
        unit: 'in',
        echo: '',
      },
    },
    {
      title: 'Long text',
      data: { id: 'field-long', label: LONG, hint: LONG, value: LONG, unit: 'in', error: LONG, echo: LONG },
    },
    {
      title: 'Hostile text',
      data: {
        id: 'field-hostile',
        label: HOSTILE,
        hint: HOSTILE,
        value: HOSTILE,
        unit: HOSTILE.slice(0, 12),
        error: HOSTILE,
        echo: HOSTILE,
        other: { who: HOSTILE, value: HOSTILE, when: HOSTILE },
      },
    },
  ],
};
