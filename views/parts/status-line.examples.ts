import type { Part } from './part.ts';
import { HOSTILE } from './part.ts';

export interface StatusLineData {
  readonly id: string;
  readonly text?: string;
}

export const statusLine: Part<'/parts/status-line'> = {
  name: 'status-line',
  title: 'Status line',
  purpose: 'Empty when the page arrives; then says, quietly, what the other side has just done.',
  template: '/parts/status-line',
  examples: [
    { title: 'Empty', data: { id: 'status-empty' } },
    { title: 'Spoken', data: { id: 'status-said', text: 'The builder entered valve lift .566 in.' } },
    { title: 'Hostile text', data: { id: 'status-hostile', text: HOSTILE } },
  ],
};
