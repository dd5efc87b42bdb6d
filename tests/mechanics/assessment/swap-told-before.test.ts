import { expect, test } from 'vitest';
import type { Evidence, SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { read } from './plain-build.ts';
import { armOf, EIGHT, heard, sixteen } from './whole-sheet.ts';

/*
 * E4 came from 4 exhaust to 2 exhaust and E2 from 2 to 4; the sheet was read after that, 2 exhaust .020 in low. What was
 * read before the swap is entered last, said to be with the arms fitted before. Figures invented; what follows the
 * rocker is the part: common practice, no published source.
 */
const E4 = armOf('E4');
const E2 = armOf('E2');
const early = (more: Partial<SheetEvidence>): SheetEvidence[] =>
  [
    read(4, 'exhaust', 'valve-lift', 0.5322, { armId: E4.id, lash: 'zero' }),
    read(2, 'exhaust', 'valve-lift', 0.552, { armId: E2.id, lash: 'zero' }),
  ].map((each, at) => ({ ...each, ...more, id: `early-${at}`, line: 20_000 + at }));
const swapped: Evidence = {
  ...EIGHT,
  arms: [E4, E2],
  seats: [
    { cylinder: 2, valve: 'exhaust', armId: E4.id },
    { cylinder: 4, valve: 'exhaust', armId: E2.id },
  ],
  sheet: sixteen(1.6, ({ lift }, place) => (place === '2 exhaust' ? { lift: lift - 0.02 } : {}), {
    lash: 'zero',
  }).map((each) => ({
    ...each,
    ...(each.kind !== 'valve-lift' || each.valve !== 'exhaust'
      ? {}
      : each.cylinder === 2
        ? { armId: E4.id }
        : each.cylinder === 4
          ? { armId: E2.id }
          : {}),
  })),
};

test('lifts with the arm named decide a swap, whether they were said to be of the arms before or of these', () => {
  const told = (arms: SheetEvidence['arms']) =>
    heard({ ...swapped, sheet: [...swapped.sheet, ...early({ arms })] });
  expect(heard(swapped).headlines.join(' ')).not.toContain('went with E4');
  expect(told('these').headlines.join(' ')).toContain('went with E4');
  expect(told('before').headlines).toEqual(told('these').headlines);
  expect(told('before').sentence).toBe(told('these').sentence);
});

test('an arm that is off the engine is history', () => {
  const off = early({ arms: 'before', armId: 'arm-of-another-set' });
  expect(heard({ ...swapped, sheet: [...swapped.sheet, ...off] }).headlines).toEqual(
    heard(swapped).headlines,
  );
});
