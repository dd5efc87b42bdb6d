import { expect, it } from 'vitest';
import { explainReadings } from '../../../server/mechanics/explain-readings/explain.ts';
import { WORKED_CASES } from './cases.ts';

/** The design note asks for 2 to 4 ms a call; a call here must stay under 5. */
const MOST_MILLISECONDS = 5;
const BATCHES = 20;
const CALLS = 15;

function medianOfBatch(call: () => void): number {
  const times = Array.from({ length: CALLS }, () => {
    const start = performance.now();
    call();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[Math.floor(CALLS / 2)] ?? Number.POSITIVE_INFINITY;
}

// The best of several medians, since other work on the machine only ever adds time.
it.each(WORKED_CASES)('answers $row in time', ({ input }) => {
  const medians = Array.from({ length: BATCHES }, () => medianOfBatch(() => explainReadings(input)));
  expect(Math.min(...medians)).toBeLessThan(MOST_MILLISECONDS);
});
