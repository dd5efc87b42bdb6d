import { describe, expect, test } from 'vitest';
import type { Evidence, SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { sheetPart } from '../../../server/mechanics/assessment/sheet/sheet.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { intakes, PLAIN, read } from './plain-build.ts';

const on = (sheet: readonly SheetEvidence[], more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  ...more,
  sheet,
});
const judged = (evidence: Evidence, id: string) =>
  sheetPart(evidence).judgements.find((each) => each.id === id);
const codes = (evidence: Evidence) => sheetPart(evidence).questions.map(({ code, about }) => [code, about]);

describe('ratios of the rows', () => {
  test('.560 over .350 is 1.600 ± .011: trade practice, Repeatability, ±.002 on each lift', () => {
    const evidence = on([read(1, 'intake', 'lobe-lift', 0.35), read(1, 'intake', 'valve-lift', 0.56)]);
    const ratio = sheetPart(evidence).quantities.find(({ name }) => name === 'Light-spring ratio');
    expect(ratio?.value).toBeCloseTo(1.6, 12);
    // √((.002/.56)² + (.002/.35)²)·1.6 = .01078, by hand.
    expect((ratio?.high ?? 0) - (ratio?.value ?? 0)).toBeCloseTo(0.01078, 5);
    expect(ratio?.conditions).toEqual(['light spring', 'lash not said']);
  });

  test('light and running are two quantities, and one whose spring is not said lacks it', () => {
    const part = sheetPart(
      on([
        read(1, 'intake', 'valve-lift', 0.56),
        read(1, 'intake', 'valve-lift', 0.545, { spring: 'running' }),
        read(3, 'intake', 'valve-lift', 0.55, { spring: 'not-said' }),
      ]),
    );
    const names = part.detail.ratios.map(({ cylinder, name }) => [cylinder, name]);
    expect(names).toEqual([
      [1, 'Light-spring ratio'],
      [1, 'Running-spring ratio'],
      [3, 'Ratio, spring not said'],
    ]);
    expect(part.quantities.find(({ name }) => name === 'Ratio, spring not said')?.lacks).toEqual([
      'which spring was on the valve',
    ]);
  });
});

describe('what a row is asked', () => {
  test('a turn missed: .460 where 1.6 × .350 makes .560, trade practice 7, row 1', () => {
    const evidence = on(intakes({ 5: { lift: 0.46 } }));
    expect(codes(evidence)).toContainEqual([
      'turn-miscounted',
      { of: 'valve', cylinder: 5, valve: 'intake' },
    ]);
    expect(
      sheetPart(evidence).detail.rows.find(({ cylinder, valve }) => cylinder === 5 && valve === 'intake')
        ?.inDoubt,
    ).toBe(true);
  });

  test('while it is open the row is not called odd, and no swap is advised; looked at, it is', () => {
    const evidence = on(intakes({ 5: { lift: 0.46 } }));
    expect(judged(evidence, 'odd:light:5-intake')).toBeUndefined();
    const doubt = judged(evidence, 'odd:in-doubt:5-intake');
    expect(doubt?.word).toBeUndefined();
    expect(doubt?.sentence).toBe(
      '5 intake is not set against the others yet. First: Could one turn of the dial be missing?',
    );
    const question = sheetPart(evidence).questions.find(({ code }) => code === 'turn-miscounted');
    const answers = [
      {
        id: 'a',
        line: 99,
        questionId: question?.id ?? '',
        code: 'turn-miscounted',
        question: '',
        answer: 'counted',
        found: false,
      },
    ];
    const others = sheetPart({ ...evidence, answers }).questions.filter(
      ({ weight, answered }) => weight === 'strong' && answered === undefined,
    );
    expect(others.map(({ code }) => code)).toEqual([]);
    expect(judged({ ...evidence, answers }, 'odd:light:5-intake')?.word).toBe('odd');
  });

  test('millimetres, a valve lift as lobe, the other lobe, a slipped point: trade practice 7, rows 2, 3, 5, 6', () => {
    const asked = (row: { lobe?: number; lift?: number }) =>
      codes(on(intakes({ 2: row }))).map(([code]) => code);
    expect(asked({ lift: 14.22 })).toContain('unit-mixed');
    expect(asked({ lobe: 0.56 })).toContain('gross-lift-as-lobe');
    expect(asked({ lobe: 0.362, lift: 0.579 })).toContain('valve-swapped');
    expect(asked({ lift: 5.6 })).toContain('decimal-slip');
  });

  test('a hand read backwards: 5 turns and 60 read as 5 and 40, trade practice 7, row 21', () => {
    expect(codes(on(intakes({ 4: { lift: 0.54 } }))).map(([code]) => code)).toContain('hand-read-backwards');
    // 4 turns and 18 for 5 and 82 with both hands turned round: 1.000 − .418 = .582; lobe .364 × 1.6.
    const card = { assumedRatio: 1.6, intake: { lobeLift: 0.364 * IN }, exhaust: { lobeLift: 0.364 * IN } };
    expect(codes(on([read(1, 'intake', 'valve-lift', 0.418)], { card })).map(([code]) => code)).toContain(
      'hand-read-backwards',
    );
  });

  test('a column copied: one number on all eight intakes, trade practice 7, row 16; asked once for the side', () => {
    const sheet = [1, 2, 3, 4, 5, 6, 7, 8].map((cylinder) => read(cylinder, 'intake', 'valve-lift', 0.56));
    const found = sheetPart(on(sheet)).questions.filter(({ code }) => code === 'copied-reading');
    expect(found.map(({ weight, about }) => [weight, about])).toEqual([
      ['strong', { of: 'side', valve: 'intake' }],
    ]);
    expect(found[0]?.restsOn).toHaveLength(8);
    expect(codes(on(intakes())).map(([code]) => code)).not.toContain('copied-reading');
  });

  test('the card is doubted once, not on every row', () => {
    const card = { ...PLAIN.card, intake: { lobeLift: 3.5 * IN } };
    const slips = codes(on(intakes(), { card })).filter(([code]) => code === 'decimal-slip');
    expect(slips).toEqual([['decimal-slip', { of: 'side', valve: 'intake' }]]);
  });
});

describe('passes of one figure', () => {
  test('one that stands apart by a turn is named, and the others are not averaged with it', () => {
    const evidence = on([0.56, 0.561, 0.46].map((lift) => read(1, 'intake', 'valve-lift', lift)));
    const part = sheetPart(evidence);
    const cell = part.detail.rows[0]?.cells.find(({ kind }) => kind === 'valve-lift');
    // (.560 + .561)/2, by hand; .46 is .1005 under that: one turn of .100.
    expect((cell?.value ?? 0) / IN).toBeCloseTo(0.5605, 12);
    expect(cell?.apart.map(({ turns }) => turns)).toEqual([1]);
    expect(part.questions.find(({ code }) => code === 'pass-apart')?.ask).toBe(
      'Was one turn missed in .460 in?',
    );
  });

  test('of two that lie apart neither is believed', () => {
    const cell = sheetPart(on([0.56, 0.46].map((lift) => read(1, 'intake', 'valve-lift', lift)))).detail
      .rows[0]?.cells[0];
    expect(cell?.value).toBeUndefined();
    expect(cell?.lacks[0]).toMatch(/^one more pass/);
  });

  test('passes that fall on a hydraulic lifter have no mean: trade practice 2.4', () => {
    const sheet = [0.54, 0.534, 0.528].map((lift) =>
      read(1, 'intake', 'valve-lift', lift, { lifter: 'hydraulic' }),
    );
    const cell = sheetPart(on(sheet)).detail.rows[0]?.cells[0];
    expect(cell?.value).toBeUndefined();
    expect(cell?.lacks[0]).toMatch(/solid lifter/);
  });
});

describe('odd valves and swaps', () => {
  const arms = ['A', 'B'].map((name) => ({ id: name, name, ratioStamp: '', otherNumber: '', boxLabel: '' }));
  const low = (cylinder: number, lift: number, armId?: string) =>
    read(cylinder, 'intake', 'valve-lift', lift, armId === undefined ? {} : { armId });
  const rest = intakes().filter(({ kind, cylinder }) => kind === 'lobe-lift' || ![3, 5].includes(cylinder));
  const seats = [
    { cylinder: 3, valve: 'intake', armId: 'B' },
    { cylinder: 5, valve: 'intake', armId: 'A' },
  ] as const;

  test('a low lift on a lobe like its siblings’: rocker or position, and the swap that tells', () => {
    const evidence = on([...rest, low(3, 0.56), low(5, 0.545)], { arms, seats });
    const odd = judged(evidence, 'odd:light:5-intake');
    expect(odd?.sentence).toMatch(/^5 intake is the odd one on the light spring. Valve lift .015 in low/);
    expect(odd?.lacks[0]).toMatch(/^A \(5 intake\) and B \(3 intake\) swapped/);
  });

  test('the difference went with the arm, whatever order the readings came in', () => {
    const readings = [low(3, 0.56, 'B'), low(5, 0.545, 'A'), low(3, 0.546, 'A'), low(5, 0.56, 'B')];
    const swapped = [
      { cylinder: 3, valve: 'intake', armId: 'A' },
      { cylinder: 5, valve: 'intake', armId: 'B' },
    ] as const;
    const orders = [readings, readings.toReversed(), [readings[2], readings[0], readings[3], readings[1]]];
    const told = orders.map((order) =>
      sheetPart(
        on([...order.flatMap((each) => each ?? []), ...rest], { arms: arms.toReversed(), seats: swapped }),
      ).judgements.filter(({ id }) => id.startsWith('swap')),
    );
    expect(told[0]).toHaveLength(1);
    expect(told[0]?.[0]?.sentence).toMatch(
      /the difference went with A, low on both valves\. It is the part: A\./,
    );
    expect(told[1]).toEqual(told[0]);
    expect(told[2]).toEqual(told[0]);
  });

  test('an arm named after its valve was read is known of that reading', () => {
    const readings = [low(3, 0.56), low(5, 0.545), low(3, 0.546, 'A'), low(5, 0.56, 'B')];
    // Nothing says which arm the first two were read with, once two have sat there.
    const [swap] = sheetPart(on([...readings, ...rest], { arms, seats })).detail.swaps;
    expect([swap?.verdict, swap?.missing.map(({ place, arm }) => `${place} with ${arm}`)]).toEqual([
      'cannot-tell',
      ['3 intake with B', '5 intake with A'],
    ]);
    const named = sheetPart(on([low(3, 0.56), low(5, 0.545)], { arms, seats }));
    expect(named.quantities.length).toBeGreaterThan(0);
  });

  test('a lobe .010 down or more stops it; a diesel workshop manual’s limit, opening read', () => {
    const worn = sheetPart(on(intakes({ 2: { lobe: 0.34, lift: 0.544 } })));
    expect(worn.stop.map(({ id }) => id)).toEqual(['stop:lobe-worn:2-intake']);
    expect(sheetPart(on(intakes({ 2: { lobe: 0.3425, lift: 0.548 } }))).stop).toEqual([]);
  });
});
