import type { ButtonData } from './button.examples.ts';
import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

export interface HoldData {
  readonly id: string;
  readonly title: string;
  /** Why nobody turns it, each with what has to happen first. */
  readonly reasons: readonly { readonly sentence: string; readonly wayOut: string }[];
  /** What a plan is short of beside that, a tap away; never why it is stopped. */
  readonly more?: { readonly summary: string; readonly reasons: HoldData['reasons'] };
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
      title: 'Several plans',
      data: {
        id: 'hold-plans',
        title: 'Not to be fitted as planned',
        reasons: [{ sentence: 'Room to coil bind is short.', wayOut: 'Find shorter springs.' }],
        more: {
          summary: 'One more reason',
          reasons: [{ sentence: 'Retainer to seal is short.', wayOut: 'Cut the guide.' }],
        },
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
