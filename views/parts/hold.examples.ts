import type { ButtonData } from './button.examples.ts';
import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

export interface HoldData {
  readonly id: string;
  readonly reason: string;
  readonly who: string;
  readonly at: string;
  readonly when: string;
  /** What has to happen before later steps open again. */
  readonly until?: string;
  /** For whoever may lift it. */
  readonly lift?: ButtonData;
}

export const hold: Part<'/parts/hold'> = {
  name: 'hold',
  title: 'Hold',
  purpose: 'Stops the engine being turned, on both sides, until someone lifts it with a reason.',
  template: '/parts/hold',
  examples: [
    {
      title: 'At the desk',
      data: {
        id: 'hold-desk',
        reason: 'Resistance felt at 30 after top. Back off, leave it where it is, send photos.',
        who: 'Builder',
        at: '2026-11-25T10:47:00Z',
        when: '10:47',
        lift: { label: 'Lift the hold', href: '#lift' },
      },
    },
    {
      title: 'At the bench',
      data: {
        id: 'hold-bench',
        reason: 'Resistance felt at 30 after top. Back off, leave it where it is, send photos.',
        who: 'You',
        at: '2026-11-25T10:47:00Z',
        when: '10:47',
      },
    },
    {
      title: 'Long and hostile text',
      data: {
        id: 'hold-hostile',
        reason: `${LONG} ${HOSTILE}`,
        who: HOSTILE,
        at: '2026-11-25T10:47:00Z',
        when: HOSTILE,
        until: HOSTILE,
      },
    },
  ],
};
