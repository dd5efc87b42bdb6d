import { expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { ArmEvidence, Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { armOf, EIGHT, sixteen } from './whole-sheet.ts';

/* Two arms that were put on record the wrong way round and put right were not swapped by that. */

const [A, B] = [armOf('A'), armOf('B')];
const at = ({ id }: ArmEvidence, cylinder: number) => ({ armId: id, cylinder, valve: 'intake' as const });

/** Every row read, A on 1 intake, .020 in low. */
const sheet = sixteen(1.6, (row, place) => (place === '1 intake' ? { lift: row.lift - 0.02 } : {})).map(
  (entry) => (entry.cylinder === 1 && entry.valve === 'intake' ? { ...entry, armId: A.id } : entry),
);

const swapsOf = (seats: Evidence['seats'], sat: NonNullable<Evidence['sat']>) =>
  [sat, [...sat].reverse()].map((put) =>
    assess({ ...EIGHT, arms: [A, B], seats, sat: put, sheet })
      .judgements.map(({ id }) => id)
      .filter((id) => id.startsWith('swap:')),
  );

test('on record the wrong way round, put right, read, and moved elsewhere: no swap', () => {
  const moved = swapsOf([at(B, 3), at(A, 5)], [at(A, 3), at(B, 1), at(A, 1), at(B, 3), at(A, 5)]);
  expect(moved).toEqual([[], []]);
});

test('read on one, then the two changed over: a swap', () => {
  const swap = ['swap:light:arm-A:arm-B:1-intake:3-intake'];
  expect(swapsOf([at(A, 3), at(B, 1)], [at(A, 1), at(B, 3), at(A, 3), at(B, 1)])).toEqual([swap, swap]);
});
