import { describe, expect, test } from 'vitest';
import type {
  Evidence,
  SheetEvidence,
  SheetKindName,
} from '../../../server/mechanics/assessment/evidence.ts';
import { sheetPart } from '../../../server/mechanics/assessment/sheet/sheet.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN, read } from './plain-build.ts';

const asked = (sheet: readonly SheetEvidence[]) =>
  sheetPart({ ...PLAIN, sheet })
    .questions.filter(({ code }) => code === 'copied-reading')
    .map(({ weight, ask, size }) => [weight, ask, size]);
const column = (kind: SheetKindName, values: readonly number[]) =>
  values.map((value, index) => read(index + 1, 'intake', kind, value));

/** Invented lobes that lie within .0005 of each other, as ground ones do. */
const LOBES = [0.353, 0.353, 0.3535, 0.353, 0.3525, 0.353, 0.353, 0.3535];
const LIFTS = [0.5652, 0.5647, 0.5661, 0.5653, 0.5649, 0.5644, 0.5658, 0.5651];

describe('a column copied: trade practice 7, row 16', () => {
  test('lobes within .0005 of each other are honest', () => {
    expect(asked(column('lobe-lift', LOBES))).toEqual([]);
  });

  test('eight lobes at one number of a .001 dial too: they are ground alike', () => {
    expect(
      asked(
        column(
          'lobe-lift',
          LOBES.map(() => 0.353),
        ),
      ),
    ).toEqual([]);
  });

  test('eight lifts at one number are not: arms differ', () => {
    const [found] = asked(
      column(
        'valve-lift',
        LIFTS.map(() => 0.565),
      ),
    );
    expect(found?.[0]).toBe('strong');
    // (2Φ(⅓) − 1)⁷ = .2611⁷ = 8.3e-5, by a normal table.
    expect(found?.[2]).toBe(
      '8 of 8 stand at one number; read to .001 in that is about 1 in 12000 by chance.',
    );
  });

  test('a second pass that is the first everywhere, to the last noisy digit, is asked; the lifts are believed', () => {
    const twice = [...column('valve-lift', LIFTS), ...column('valve-lift', LIFTS)];
    const [found] = asked(twice);
    expect(found?.[0]).toBe('weak');
    expect(found?.[1]).toBe(
      'Was each valve lift of the intake valves read again, or was the first pass copied?',
    );
    expect(found?.[2]).toMatch(
      /^8 of 8 repeat to the last digit; read to \.0001 in that is less than 1 in a million/,
    );
    expect(sheetPart({ ...PLAIN, sheet: twice }).detail.rows.some(({ inDoubt }) => inDoubt)).toBe(false);
  });

  test('one pass put right since does not hide it', () => {
    const again = LIFTS.map((lift, index) => (index === 3 ? lift + 0.0012 : lift));
    expect(asked([...column('valve-lift', LIFTS), ...column('valve-lift', again)])).toHaveLength(1);
  });

  test('on a .001 dial two passes are alike half the time: four valves are no wonder, eight are', () => {
    const whole = LIFTS.map((lift) => Number(lift.toFixed(3)));
    const twice = (count: number) => [
      ...column('valve-lift', whole.slice(0, count)),
      ...column('valve-lift', whole.slice(0, count)),
    ];
    expect(asked(twice(4))).toEqual([]);
    expect(asked(twice(8))[0]?.[2]).toMatch(/read to \.001 in that is about 1 in 320 by chance/);
  });

  test('passes that repeat as passes do are not asked', () => {
    const scatter = [0.0003, -0.0004, 0, 0.0006, -0.0002, 0.0005, -0.0006, 0.0001];
    const again = LIFTS.map((lift, index) => lift + (scatter[index] ?? 0));
    expect(asked([...column('valve-lift', LIFTS), ...column('valve-lift', again)])).toEqual([]);
  });

  describe('a column that is the card’s own', () => {
    const card = {
      ...PLAIN.card,
      assumedRatio: 1.6,
      intake: { lobeLift: 0.353 * IN, valveLift: 0.5648 * IN },
    };
    const onCard = (sheet: readonly SheetEvidence[], more: Partial<Evidence> = {}) =>
      sheetPart({ ...PLAIN, card, ...more, sheet })
        .questions.filter(({ code }) => code === 'copied-reading')
        .map(({ weight, ask, size }) => [weight, ask, size]);
    const same = (value: number, count = 8) => Array.from({ length: count }, () => value);

    test('every lift at the card’s figure: asked once, by where it is from, and nothing is believed', () => {
      expect(onCard(column('valve-lift', same(0.5648)))).toEqual([
        [
          'strong',
          'Were the valve lifts of the intake valves read, or are they the card’s own, .565 in?',
          '8 of 8 stand at the card’s figure, to the last digit.',
        ],
      ]);
    });

    test('a figure that is only worked out from the card is none of it', () => {
      const worked = { ...card, intake: { lobeLift: 0.35 * IN } };
      const [found] = onCard(column('valve-lift', same(0.56)), { card: worked });
      expect(found?.[1]).toBe(
        'Was each valve lift of the intake valves read, or was one number carried over?',
      );
    });

    test('three of eight among honest ones too; honest ones and lobes ground to the card are not asked', () => {
      const some = [...LIFTS.slice(0, 5), ...same(0.5648, 3)];
      expect(onCard(column('valve-lift', some)).map(([weight]) => weight)).toEqual(['weak']);
      expect(onCard(column('valve-lift', LIFTS))).toEqual([]);
      expect(onCard(column('lobe-lift', same(0.353)))).toEqual([]);
    });
  });
});

/* The division is that of the sheet: .0005 in. (2Φ(½) − 1)⁸ = .383⁸ = .0005, by a normal table. */
test('lobes of a whole side that are the card’s to the last digit, beside lifts read to .0005, are asked at the lobe', () => {
  const lobes = column(
    'lobe-lift',
    LOBES.map(() => 0.35),
  );
  const lifts = column('valve-lift', [0.5605, 0.56, 0.5585, 0.561, 0.559, 0.5595, 0.56, 0.5615]);
  expect(asked([...lobes, ...lifts])).toContainEqual([
    'weak',
    expect.stringMatching(/^Were the lobe lifts of the intake valves read, or are they the card’s own/),
    expect.any(String),
  ]);
});

test('lobes that were read to .0005 show it themselves: lifts beside them with a finer figure raise no question', () => {
  const lobes = column('lobe-lift', [0.35, 0.3505, 0.35, 0.3495, 0.35, 0.3505, 0.3495, 0.35]);
  const lifts = column('valve-lift', [0.5605, 0.5601, 0.5585, 0.5612, 0.559, 0.5594, 0.56, 0.5615]);
  // Half of eight at their middle division: .38 each, by a normal table.
  expect(asked([...lobes, ...lifts])).toEqual([]);
});
