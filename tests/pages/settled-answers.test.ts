import { expect, test } from 'vitest';
import { loggedAnswer } from '../../server/call/answered-text.ts';

/* A question that later marks have settled is on no page any more: what was answered is told in the words that were offered. */
test.each([
  ['stud', 'mark-mounting', 'On studs'],
  ['out-of-line', 'mark-sideways', 'No, it is out of line'],
  ['swapped', 'marks-sides-swapped', 'Yes, they were swapped'],
  ['left', 'mark-wide', 'Nothing is changed'],
  // Two questions have it, each with a label of its own.
  ['inked', 'mark-wide', '“inked”'],
])('%s, to %s', (answer, code, said) => {
  expect(loggedAnswer(answer, undefined, code)).toBe(said);
});
