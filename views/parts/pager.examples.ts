import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';

export interface PagerData {
  /** Names the landmark; several on a page need different names. */
  readonly label: string;
  readonly previous?: { readonly href: string; readonly label: string };
  readonly next?: { readonly href: string; readonly label: string };
  readonly position?: string;
}

export const pager: Part<'/parts/pager'> = {
  name: 'pager',
  title: 'Before and next',
  purpose: 'Leads along a list or to the step that follows.',
  template: '/parts/pager',
  examples: [
    {
      title: 'In the middle',
      data: {
        label: 'Steps',
        previous: { href: '#lobe', label: 'Lobe lift' },
        next: { href: '#swap', label: 'Swap test' },
      },
    },
    {
      title: 'First of many',
      data: { label: 'Calls', position: '1 to 50 of 312', next: { href: '#2', label: '51 to 100' } },
    },
    {
      title: 'Long and hostile text',
      data: {
        label: HOSTILE,
        previous: { href: '#"onclick="x', label: LONG },
        next: { href: '#', label: HOSTILE },
      },
    },
  ],
};
