import type { Evidence } from '../evidence.ts';
import { MUST, type Need, need } from './need.ts';

const SHORT = 80;

/** What is said at the end of a call, and what was promised and is not done. */
export const ofNotes = ({ notes }: Evidence): Need[] => [
  need(
    'said',
    'what was found or advised',
    'Say what was found, and who does what by when.',
    notes.some(({ kind }) => kind !== 'promise'),
    MUST,
  ),
  ...notes
    .filter(({ kind, done }) => kind === 'promise' && !done)
    .map(({ id, body }) =>
      need(
        `promise:${id}`,
        `promise open: ${body.slice(0, SHORT)}`,
        `Keep the promise: ${body.slice(0, SHORT)}`,
        false,
        MUST,
      ),
    ),
];
