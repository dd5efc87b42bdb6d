import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, LashEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { lashSlips } from '../../../server/mechanics/lash/lash-slips.ts';
import { line, log } from './lash-log.ts';
import { PLAIN } from './plain-build.ts';

const told = (lash: readonly LashEvidence[], more: Partial<Evidence> = {}) => {
  const said = assess({
    ...log(lash),
    call: { ...PLAIN.call, goal: 'adjuster' },
    ...more,
  });
  return {
    ...said,
    codes: said.questions.map(({ code }) => code),
    text: said.headlines.map(({ sentence }) => sentence).join('\n'),
  };
};
const card = (intake: number, exhaust: number, lashAt?: 'cold' | 'hot'): Pick<Evidence, 'card'> => ({
  card: {
    ...PLAIN.card,
    intake: { ...PLAIN.card.intake, lash: intake * IN },
    exhaust: { ...PLAIN.card.exhaust, lash: exhaust * IN },
    ...(lashAt === undefined ? {} : { lashAt }),
  },
});
const between = (low: number, high: number) => ({ gap: { low: low * IN, high: high * IN } });

describe('a gap is set against the card at its own heat alone', () => {
  const cold = line(1, '2026-01-10', 0.012);
  const sum: Evidence['workings'] = [
    {
      id: 'h',
      computation: 'lash-hot-cold',
      line: 8,
      set: { of: 'heat', ratio: 1.5, hot: 0.02 * IN, cold: 0.0123 * IN },
    },
  ];

  test('.012 cold beside a hot .020 is no slip of the pen, with the sum of the metals and without', () => {
    expect(told([cold], card(0.02, 0.02, 'hot')).codes).not.toContain('lash-unlikely');
    expect(told([cold], { ...card(0.02, 0.02, 'hot'), workings: sum }).codes).not.toContain('lash-unlikely');
  });

  test('by the sum .021 cold is one, and at the heat of the card .012 is', () => {
    const off = told([line(1, '2026-01-10', 0.021)], { ...card(0.02, 0.02, 'hot'), workings: sum });
    expect(off.questions.find(({ code }) => code === 'lash-unlikely')?.size).toMatch(/\.012 in meant/);
    expect(told([line(1, '2026-01-10', 0.012, { engine: 'hot' })], card(0.02, 0.02, 'hot')).codes).toContain(
      'lash-unlikely',
    );
    expect(told([cold], card(0.02, 0.02)).codes).toContain('lash-unlikely');
  });
});

test('what a lash may have been meant as is told once', () => {
  const said = lashSlips(0.2 * IN, 'in').map((each) => each.said);
  expect(new Set(said).size).toBe(said.length);
});

/* .004 in of growth is ordinary: common practice, no published source. */
describe('a growth that gauges leave open is told', () => {
  test.each([
    [between(0.018, 0.02), between(0.022, 0.024), /grew by \.002 to \.006 in.*can’t be told/],
    [between(0.018, 0.02), between(0.023, 0.025), /grew by \.003 to \.007 in.*can’t be told/],
    [between(0.018, 0.02), between(0.0125, 0.015), /closed by \.003 to \.0075 in.*can’t be told/],
  ])('%j to %j', (set, found, said) => {
    const open = told([line(1, '2026-01-10', 0, { moment: 'set', ...set }), line(2, '2026-02-10', 0, found)]);
    expect(open.text).toMatch(said);
  });

  test('.002 more is ordinary and leaves nothing to set; a moved lock, or another heat, does', () => {
    const set = line(1, '2026-01-10', 0.02, { moment: 'set' });
    const more = told([set, line(2, '2026-02-10', 0.022)], card(0.02, 0.02, 'cold'));
    expect(more.text).toMatch(/no more than is ordinary, with nothing to set: 3 exhaust \.022 in/);
    expect(more.next?.sentence).not.toMatch(/thread and turns/);
    for (const other of [{ nut: 'moved' as const }, { engine: 'hot' as const }])
      expect(told([set, line(2, '2026-02-10', 0.022, other)]).text).not.toMatch(/nothing to set/);
  });
});

describe('the lashes of the two sides the wrong way round', () => {
  const all = (intake: number, exhaust: number) =>
    [1, 2, 3, 4].flatMap((cylinder) => [
      line(cylinder, '2026-01-10', intake, { cylinder, valve: 'intake' }),
      line(cylinder + 10, '2026-01-10', exhaust, { cylinder, valve: 'exhaust' }),
    ]);

  test('is asked first, with what each answer leads to', () => {
    const swapped = told(all(0.022, 0.014), card(0.014, 0.022));
    expect(swapped.next?.action).toBe('lash-sides-swapped');
    expect(swapped.text).toMatch(/card has \.014 in for the intake and \.022 in for the exhaust/);
    const question = swapped.questions.find(({ code }) => code === 'lash-sides-swapped');
    const answered = (answer: string) =>
      told(all(0.022, 0.014), {
        ...card(0.014, 0.022),
        answers: [
          {
            id: 'a',
            line: 50,
            code: question?.code ?? '',
            questionId: question?.id ?? '',
            question: '',
            answer,
          },
        ],
      });
    expect(answered('set-so').text).toMatch(/each is set to its own figure/);
    expect(answered('set-so').next?.action).not.toBe('lash-sides-swapped');
    expect(answered('card').text).toMatch(/put right on the card first/);
    expect(answered('meant').text).not.toMatch(/wrong way round/);
  });

  test('as the card has them, one side alone, or two figures that are near one another: not asked', () => {
    const codes = (lash: readonly LashEvidence[], of: Pick<Evidence, 'card'>) => told(lash, of).codes;
    expect(codes(all(0.014, 0.022), card(0.014, 0.022))).not.toContain('lash-sides-swapped');
    expect(codes(all(0.022, 0.022), card(0.014, 0.022))).not.toContain('lash-sides-swapped');
    expect(codes(all(0.018, 0.016), card(0.016, 0.018))).not.toContain('lash-sides-swapped');
  });
});

test('half a thousandth is told where a feeler has one, so that gap and growth follow from one another', () => {
  // .0275 − .0215 = .006; .0215 − .0200 = .0015.
  const grown = told([line(1, '2026-01-10', 0.0215, { moment: 'set' }), line(2, '2026-02-10', 0.0275)]).text;
  expect(grown).toMatch(/\.0275 in now\. It grew by \.006 in/);
  expect(told([line(1, '2026-01-10', 0.0215)], card(0.02, 0.02, 'cold')).text).toMatch(
    /found at \.0215 in cold, the card asks for \.020 in: \.0015 in wide/,
  );
});
