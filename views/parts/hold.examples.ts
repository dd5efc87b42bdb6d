import type { ButtonData } from './button.examples.ts';
import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

export interface HoldData {
  readonly id: string;
  readonly title: string;
  /** Why nobody turns it, each with what has to happen first. */
  readonly reasons: readonly { readonly sentence: string; readonly wayOut: string }[];
  /** Where a person said stop. */
  readonly set?: { readonly who: string; readonly at: string; readonly when: string };
  /** For whoever may lift it. */
  readonly lift?: ButtonData;
}

export const hold: Part<'/parts/hold'> = {
  name: 'hold',
  title: 'Stop',
  purpose: 'Stops the engine being turned, on both sides, until someone lifts it with a reason.',
  template: '/parts/hold',
  examples: [
    {
      title: 'At the desk',
      data: {
        id: 'hold-desk',
        title: 'Stop: nobody turns it',
        reasons: [
          {
            sentence: 'Do not turn it: resistance felt at 30 after top.',
            wayOut: 'The desk lifts the stop, with a reason, once that is looked at.',
          },
        ],
        set: { who: 'Builder', at: '2026-11-25T10:47:00Z', when: '10:47' },
        lift: { label: 'Lift the stop', href: '#lift' },
      },
    },
    {
      title: 'At the bench',
      data: {
        id: 'hold-bench',
        title: 'Stop: nobody turns it',
        reasons: [
          {
            sentence: 'Do not turn it: resistance felt at 30 after top.',
            wayOut: 'The desk lifts the stop, with a reason, once that is looked at.',
          },
        ],
        set: { who: 'You', at: '2026-11-25T10:47:00Z', when: '10:47' },
      },
    },
    {
      title: 'Long and hostile text',
      data: {
        id: 'hold-hostile',
        title: HOSTILE,
        reasons: [{ sentence: `${LONG} ${HOSTILE}`, wayOut: HOSTILE }],
        set: { who: HOSTILE, at: '2026-11-25T10:47:00Z', when: HOSTILE },
      },
    },
  ],
};
