import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

export interface UnsentEntry {
  /** The words on the button that was pressed. */
  readonly pressed: string;
  /** What was typed, by the labels of its fields. */
  readonly typed: string;
  /** Where it is, and since when. */
  readonly state: string;
  /** It was refused, for this. */
  readonly why?: string;
  /** It can't be changed here any more. */
  readonly fixed?: boolean;
}

export interface UnsentData {
  readonly id?: string;
  readonly title: string;
  readonly hint?: string;
  readonly entries: readonly UnsentEntry[];
  /** The words can be taken along. */
  readonly copy?: boolean;
}

const lobe: UnsentEntry = {
  pressed: 'Save reading',
  typed: 'Lobe lift 5 intake, pass 2; Reading at full lift: 3 turns 24',
  state: 'not sent yet, 10:41',
};
const valve: UnsentEntry = {
  pressed: 'Save reading',
  typed: 'Valve lift 5 intake, pass 1; Reading at full lift: .566',
  state: 'no answer yet, may have arrived, 10:42',
};
const refused: UnsentEntry = {
  pressed: 'Save reading',
  typed: 'Valve lift 5 intake, pass 2; Reading at full lift: five and a bit',
  state: 'not taken, 10:44',
  why: 'Reading at full lift can’t be read as a length.',
};

export const unsent: Part<'/parts/unsent'> = {
  name: 'unsent',
  title: 'Not sent yet',
  purpose: 'At the top of the builder’s page: whether there is a signal, and what waits on this phone.',
  template: '/parts/unsent',
  examples: [
    {
      title: 'No signal, nothing entered',
      data: { title: 'No signal.', hint: 'Go on: what you enter waits on this phone.', entries: [] },
    },
    {
      title: 'No signal, two wait',
      data: {
        title: 'No signal. 2 not sent yet.',
        hint: 'The desk has not seen these. They go out in order when the signal is back.',
        entries: [lobe, valve],
      },
    },
    {
      title: 'One was refused',
      data: {
        title: '1 was not taken.',
        hint: 'Nothing of these was kept. Change them, or delete them.',
        entries: [refused],
      },
    },
    {
      title: 'The link has ended',
      data: {
        title: 'This link has ended. 2 not sent.',
        hint: 'Nothing more is kept. Copy these and tell the desk; ask for a new link.',
        entries: [
          { ...lobe, state: 'not sent, 10:41', fixed: true },
          { ...valve, state: 'no answer came, may have arrived, 10:42', fixed: true },
        ],
        copy: true,
      },
    },
    {
      title: 'Long text',
      data: { title: LONG, hint: LONG, entries: [{ pressed: LONG, typed: LONG, state: LONG, why: LONG }] },
    },
    {
      title: 'Hostile text',
      data: {
        title: HOSTILE,
        hint: HOSTILE,
        entries: [{ pressed: HOSTILE, typed: HOSTILE, state: HOSTILE, why: HOSTILE }],
      },
    },
  ],
};
