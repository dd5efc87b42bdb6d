import { describe, expect, test } from 'vitest';
import type { Evidence, SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { sheetPart } from '../../../server/mechanics/assessment/sheet/sheet.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { intakes, PLAIN, read } from './plain-build.ts';

/** How the lash was is asked of the sheet as a whole, and is no slip of a row. */
const slipsOf = ({ questions }: ReturnType<typeof sheetPart>) =>
  questions.filter(({ code }) => code !== 'lash-not-said');
const asked = (sheet: readonly SheetEvidence[], more: Partial<Evidence> = {}) =>
  slipsOf(sheetPart({ ...PLAIN, ...more, sheet }));
const FIVE = { of: 'valve', cylinder: 5, valve: 'intake' };

describe('each slip is asked once, on the row it concerns: trade practice 7, common practice, no published source', () => {
  test.each([
    ['turn-miscounted', { lift: 0.46 }],
    ['turn-miscounted', { lobe: 0.25 }],
    ['unit-mixed', { lift: 14.22 }],
    ['unit-mixed', { lobe: 8.9 }],
    ['gross-lift-as-lobe', { lobe: 0.56 }],
    ['hand-read-backwards', { lift: 0.54 }],
    ['valve-swapped', { lobe: 0.362, lift: 0.579 }],
    ['digits-swapped', { lift: 0.65 }],
    ['digits-swapped', { lift: 0.516 }],
    ['digits-swapped', { lobe: 0.53 }],
    ['decimal-slip', { lift: 5.6 }],
  ])('%s: %o', (code, row) => {
    expect(asked(intakes({ 5: row })).map((each) => [each.code, each.about])).toEqual([[code, FIVE]]);
  });

  test('what else it may be is said with it, and asked once the first does not fit', () => {
    const sheet = intakes({ 5: { lift: 0.65 } });
    const [first] = asked(sheet);
    expect(first?.size).toContain('It may also be: Could one turn of the dial too many have been counted?');
    const answers = [
      { id: 'a', line: 99, questionId: first?.id ?? '', code: '', question: '', answer: 'no', found: false },
    ];
    const after = asked(sheet, { answers });
    expect(after.map(({ code, answered }) => [code, answered?.found])).toEqual([
      ['digits-swapped', false],
      ['turn-miscounted', undefined],
    ]);
  });

  test('a pass a turn apart from the others is asked as that alone, and the row is not in doubt', () => {
    const passes = [0.56, 0.561, 0.46].map((lift) => read(5, 'intake', 'valve-lift', lift));
    const rest = intakes().filter(({ cylinder, kind }) => cylinder !== 5 || kind === 'lobe-lift');
    const part = sheetPart({ ...PLAIN, sheet: [...rest, ...passes] });
    expect(slipsOf(part).map(({ code }) => code)).toEqual(['pass-apart']);
    expect(part.detail.rows.some(({ inDoubt }) => inDoubt)).toBe(false);
  });

  test('what every row of a side is asked alike is one question of the side, and doubts those rows', () => {
    const card = { ...PLAIN.card, intake: { lobeLift: 0.45 * IN } };
    const part = sheetPart({ ...PLAIN, card, sheet: intakes() });
    expect(slipsOf(part).map(({ code, about }) => [code, about])).toEqual([
      ['turn-miscounted', { of: 'side', valve: 'intake' }],
    ]);
    expect(slipsOf(part)[0]?.size).toMatch(/^It is so on 8 of 8 intake valves/);
    expect(part.detail.rows.filter(({ inDoubt }) => inDoubt)).toHaveLength(8);
  });

  test('an honest odd valve is asked nothing: .546 is no .564 said wrong when .560 is expected', () => {
    expect(asked(intakes({ 5: { lift: 0.546 } }))).toEqual([]);
  });
});
