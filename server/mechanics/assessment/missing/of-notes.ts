import type { Evidence } from '../evidence.ts';
import { MUST, type Need, need } from './need.ts';
import { isReturned, ofReturned } from './of-returned.ts';

const SHORT = 80;

/** What is said at the end of a call, and what was promised and is not done. */
export const ofNotes = (evidence: Evidence): Need[] => [
  ...ofReturned(evidence),
  need(
    'said',
    'what was found or advised',
    'Say what was found, and who does what by when.',
    // What came with a part is a note as well, and no answer.
    evidence.notes.some(({ kind }) => (isReturned(evidence) ? kind === 'advice' : kind !== 'promise')),
    MUST,
  ),
  ...evidence.notes
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
