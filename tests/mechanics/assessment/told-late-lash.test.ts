import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { IN, lobe } from './plain.ts';
import { answer, askedOf, headline, inInches, knownNow, ratio, readBefore, statement } from './told-late.ts';

const assess = assessAsTold('told-late-lash');

describe('the lash told later', () => {
  const LEFT = 0.02 * IN;
  const setAtOnce = readBefore({ lash: 'set', lashSetting: LEFT }, [0.537, 0.537]);
  const before = readBefore({ lash: 'not-said' }, [0.537, 0.537]);

  test.each([
    ['a statement', { statements: [statement({ lash: 'set', lashSetting: LEFT })] }],
    ['the answer with its amount', { answers: [answer('lash-not-said', 'set', { value: LEFT })] }],
    ['yes, left in, with its amount', { answers: [answer('lash-left-in', 'yes', { value: LEFT })] }],
    ['the amount alone', { answers: [answer('lash-not-said', 'he says so', { value: LEFT })] }],
    [
      'left in at first, then how much',
      {
        answers: [
          answer('lash-left-in', 'found'),
          answer('lash-setting-not-said', 'set', { value: LEFT, line: 61 }),
        ],
      },
    ],
    [
      'what the log has, confirmed',
      { answers: [answer('lash-setting-not-said', 'as-logged', { value: LEFT })] },
    ],
  ])('%s: put back as if it had been said with the set-up', (_, late) => {
    const told = { ...before, ...late };
    expect(inInches(knownNow(told)?.lashSetting)).toBe(0.02);
    // (.537 + .020)/.348 = 1.6006
    expect(ratio(told)?.value).toBeCloseTo(1.6006, 4);
    expect(ratio(told)).toEqual(ratio(setAtOnce));
    expect(headline(told)).toBe(headline(setAtOnce));
    expect(headline(told)).not.toContain('how much is not said');
  });

  test.each([
    ['zero', 'lash-not-said', 'zero', 'zero'],
    ['yes, it was taken up', 'lash-not-said', 'yes', 'zero'],
    ['no, it was not taken up', 'lash-not-said', 'no', 'set'],
    ['yes, it was left in', 'lash-left-in', 'Yes', 'set'],
    ['no, it was not left in', 'lash-left-in', 'No.', 'zero'],
    ['no idea says nothing', 'lash-left-in', 'no idea', 'not-said'],
    ['not so sure says nothing', 'lash-left-in', 'not so sure', 'not-said'],
  ])('%s', (_, code, text, lash) => {
    expect(knownNow({ ...before, answers: [answer(code, text)] })?.lash).toBe(lash);
  });

  test('left in, and how much not said: that is asked, and an amount may go with the answer', () => {
    const question = askedOf(
      { ...before, statements: [statement({ lash: 'set' })] },
      'lash-setting-not-said',
    );
    expect(question?.ask).toMatch(/^How much lash was left in/);
    expect(question?.answers.map(({ code, takesValue }) => [code, takesValue ?? false])).toEqual([
      ['set', true],
      ['zero', false],
    ]);
  });

  test('every question that was answered stays with its answer', () => {
    const answers = [
      answer('lash-not-said', 'no, it was left in'),
      answer('lash-setting-not-said', 'set', { value: LEFT, line: 61 }),
    ];
    const { questions } = assess({ ...before, answers });
    const answered = questions.filter((question) => question.answered !== undefined);
    expect(answered.map(({ code, answered: said }) => [code, said?.answer])).toEqual([
      ['lash-not-said', 'no, it was left in'],
      ['lash-setting-not-said', 'set, .020 in'],
    ]);
  });

  test('an amount in somebody’s own words is put back to them, and not used unasked', () => {
    const told = { ...before, answers: [answer('lash-left-in', 'left in, .020 in', { found: true })] };
    expect(knownNow(told)?.lashSetting).toBeUndefined();
    const offered = askedOf(told, 'lash-setting-not-said')?.answers.find(({ code }) => code === 'as-told');
    expect(offered?.label).toBe('Yes, the .020 in that was told: “left in, .020 in”');
    expect(inInches(offered?.value)).toBe(0.02);
  });

  const line = (id: string, day: string, inches: number, more: object = {}) => ({
    id,
    line: 5,
    standing: true,
    cylinder: 1,
    valve: 'intake' as const,
    gap: { value: inches * IN },
    readAs: `${inches} in`,
    moment: 'set' as const,
    engine: 'cold' as const,
    nut: 'held' as const,
    day,
    ...more,
  });
  const onDay = (evidence: Evidence, day: string) => ({
    ...evidence,
    passes: evidence.passes.map((pass) => ({ ...pass, day })),
  });

  test('the newest lash of the log from before the passes is offered, and assumed nowhere', () => {
    const lash = [
      line('a', '2026-03-10', 0.016),
      line('b', '2026-03-12', 0.018),
      line('c', '2026-03-20', 0.024),
      line('d', '2026-03-12', 0.03, { valve: 'exhaust' }),
      line('e', '2026-03-13', 0.03, { standing: false }),
    ];
    const told = { ...onDay(before, '2026-03-14'), lash };
    expect(knownNow(told)?.lash).toBe('not-said');
    const offered = askedOf(told, 'lash-left-in')?.answers.filter(({ code }) => code === 'as-logged');
    expect(offered?.map(({ label }) => label)).toEqual(['Yes, the .018 in that was set on 2026-03-12']);
    expect(inInches(offered?.[0]?.value)).toBe(0.018);
  });

  test('a lash that was logged after the passes were read is not offered', () => {
    const told = { ...onDay(before, '2026-03-14'), lash: [line('c', '2026-03-20', 0.024)] };
    expect(askedOf(told, 'lash-not-said')?.answers.map(({ code }) => code)).toEqual(['zero', 'set']);
  });

  test('the card’s lash is offered, and never taken for what was in it', () => {
    const card = { intake: { ...lobe(0.348), lash: 0.016 * IN }, exhaust: lobe(0.339) };
    const told = { ...before, card, statements: [statement({ lash: 'set' })] };
    expect(askedOf(told, 'lash-setting-not-said')?.answers.map(({ code }) => code)).toEqual([
      'set',
      'as-card',
      'zero',
    ]);
    expect(knownNow(told)?.lashSetting).toBeUndefined();
  });
});
