import type { Part } from './part.ts';
import { HOSTILE } from './part.ts';

export interface TagData {
  readonly text: string;
  readonly strong?: boolean;
}

export const tag: Part<TagData> = {
  name: 'tag',
  title: 'Tag',
  purpose: 'A word that belongs to what it stands beside: measured, calculated, demo.',
  template: '/parts/tag',
  examples: [
    { title: 'Plain', data: { text: 'calculated' } },
    { title: 'Strong', data: { text: 'Demo: invented data', strong: true } },
    { title: 'Hostile text', data: { text: HOSTILE } },
  ],
};
