import { expect, test } from 'vitest';
import { evidenceOf } from '../../server/assessment/evidence.ts';
import type { Evidence } from '../../server/mechanics/assessment/evidence.ts';
import { nothingKnown } from '../mechanics/assessment/plain.ts';
import { callOf, recordOf } from '../tools/record-of-evidence.ts';

/** What a record says was lifted, as the assessment takes it. */
function lifted(stopsLifted: NonNullable<Evidence['call']['stopsLifted']>) {
  const kept: Evidence = { ...nothingKnown, call: { ...nothingKnown.call, stopsLifted } };
  return evidenceOf(recordOf(kept), callOf(kept)).call.stopsLifted;
}

test('a stop of turns that was lifted while all sums had one stop stays lifted, for that sum alone', () => {
  expect(lifted([{ stopId: 'stop:plunger-bottomed', entryId: 'sum-1' }])).toEqual([
    { stopId: 'stop:plunger-bottomed:sum-1', entryId: 'sum-1' },
  ]);
});

test('a stop that has its own name keeps it', () => {
  const own = [
    { stopId: 'stop:plunger-bottomed:sum-2', entryId: 'sum-2' },
    { stopId: 'stop:lobe-worn:1-intake', entryId: 'lobe' },
  ];
  expect(lifted(own)).toEqual(own);
});
