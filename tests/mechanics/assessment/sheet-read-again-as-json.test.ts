import { expect, test } from 'vitest';
import { showSheet } from '../../../server/assessment/sheet/view.ts';
import { recordOf } from '../../tools/record-of-evidence.ts';
import { answered, EIGHT, heard, sixteen } from './whole-sheet.ts';

/* A pass that an answer found wrong and that was taken again is no pass that stands apart. */
test('a reading that was found wrong is told as that, not as one that stands apart', () => {
  const AT = 9_000;
  const left = answered({ ...EIGHT, sheet: sixteen(1.6) }, 'lash-not-said', 'set', AT);
  const [lift] = left.sheet.filter(({ kind }) => kind === 'valve-lift');
  if (lift === undefined) throw new Error('no lift was read');
  const evidence = { ...left, sheet: [...left.sheet, { ...lift, id: 'again', line: AT + 1 }] };
  const figure = { kind: 'valve-lift', passes: 1, apart: [], readAgain: [lift.id], readingIds: ['again'] };
  expect(showSheet(recordOf(evidence), heard(evidence).all, 'bank')).toMatchObject({
    valves: expect.arrayContaining([
      expect.objectContaining({
        cylinder: lift.cylinder,
        valve: lift.valve,
        figures: expect.arrayContaining([expect.objectContaining(figure)]),
      }),
    ]),
  });
});
