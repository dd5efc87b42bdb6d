import type { Part } from './part.ts';
import type { TapeLineData } from './tape-line.examples.ts';
import { tapeLines } from './tape-line.examples.ts';

export interface TapeData {
  readonly id: string;
  readonly title?: string;
  readonly lines: readonly TapeLineData[];
  readonly empty?: string;
}

export const tape: Part<'/parts/tape'> = {
  name: 'tape',
  title: 'The tape',
  purpose:
    'The record of the call, one strip that both sides see. What was replaced stays, struck through, with the reason.',
  template: '/parts/tape',
  examples: [
    { title: 'Eight lines of a call', data: { id: 'tape-call', lines: tapeLines } },
    { title: 'Empty', data: { id: 'tape-empty', lines: [] } },
  ],
};
