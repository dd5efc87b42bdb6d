import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

interface MissingItem {
  readonly text: string;
  readonly have?: boolean;
  /** Where it is entered. */
  readonly href?: string;
}

export interface MissingData {
  readonly id: string;
  readonly title?: string;
  readonly needs: readonly {
    readonly for: string;
    readonly href?: string;
    /** The key that opens it. */
    readonly key?: string;
    /** It is the one that is open. */
    readonly current?: boolean;
    readonly items: readonly MissingItem[];
  }[];
  readonly empty?: string;
}

export const missingOnCall: MissingData = {
  id: 'missing-call',
  needs: [
    {
      for: 'Light ratio',
      items: [
        { text: 'valve lift', have: true },
        { text: 'lobe lift at the lifter', href: '#lobe' },
        { text: 'spring on the valve', have: true },
      ],
    },
    {
      for: 'Coil bind',
      items: [
        { text: 'installed height', href: '#height' },
        { text: 'solid height', href: '#solid' },
        { text: 'net lift' },
      ],
    },
    {
      for: 'Stud the hole takes',
      href: '#stud',
      key: '3',
      current: true,
      items: [{ text: 'hole both ways', have: true }],
    },
  ],
};

export const missing: Part<'/parts/missing'> = {
  name: 'missing',
  title: 'Steps, and what is missing',
  purpose: 'The steps of a call, each with what it still lacks.',
  template: '/parts/missing',
  examples: [
    { title: 'In the middle of a call', data: { ...missingOnCall, id: 'missing-middle' } },
    { title: 'Empty', data: { id: 'missing-empty', needs: [] } },
    {
      title: 'Long and hostile text',
      data: {
        id: 'missing-hostile',
        title: HOSTILE,
        needs: [
          {
            for: HOSTILE,
            href: '#"onclick="x',
            items: [
              { text: LONG, have: true },
              { text: HOSTILE, href: '#' },
            ],
          },
        ],
      },
    },
  ],
};
