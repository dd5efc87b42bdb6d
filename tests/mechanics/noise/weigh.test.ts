import { describe, expect, test } from 'vitest';
import { CAUSE_NAMES, type CauseName } from '../../../server/mechanics/noise/causes.ts';
import { effectOf, possibleEffects, WEIGHS } from '../../../server/mechanics/noise/effects.ts';
import {
  contenders,
  type Fact,
  pairsParted,
  parts,
  remaining,
  weigh,
} from '../../../server/mechanics/noise/weigh.ts';
import { answersTo, isNoiseQuestion, NOISE_QUESTIONS } from '../../../shared/schemas/noise.ts';

const QUESTIONS = Object.keys(NOISE_QUESTIONS).filter(isNoiseQuestion);
const effects = QUESTIONS.flatMap((question) =>
  Object.keys(answersTo(question)).map((answer) => ({ question, answer, ...effectOf(question, answer) })),
);

const fact = (key: string, speaksFor: CauseName[], against: CauseName[]): Fact => ({
  key,
  text: key,
  restsOn: [],
  for: speaksFor,
  against,
});

describe('what each answer speaks for', () => {
  test('nothing for and against the same cause; that it is not known speaks for nothing', () => {
    for (const { answer, for: speaksFor, against } of effects) {
      expect(speaksFor.filter((cause) => against.includes(cause))).toEqual([]);
      if (answer === 'not-known') expect([...speaksFor, ...against]).toEqual([]);
    }
  });

  test('every cause has an answer that speaks for it, and one that speaks against it', () => {
    for (const cause of CAUSE_NAMES) {
      expect(
        effects.some((each) => each.for.includes(cause)),
        `for ${cause}`,
      ).toBe(true);
      expect(
        effects.some((each) => each.against.includes(cause)),
        `against ${cause}`,
      ).toBe(true);
    }
  });

  test('a desk’s own rule: a nut that moved is the lock, one that held is not; common practice, no source', () => {
    expect(WEIGHS['noise-nut'].effects.moved.for).toEqual(['nut-lock', 'stud-top', 'stud-thread']);
    expect(WEIGHS['noise-nut'].effects.held.against).toEqual(['nut-lock', 'stud-top', 'stud-thread']);
    // One bad: part or position; all bad: oil or set-up (common practice, no published source).
    expect(WEIGHS['noise-which'].effects.all.for).toEqual(['oil', 'setting']);
  });

  test('each question is kept in its own words, uncut, and ends as a question', () => {
    for (const question of QUESTIONS) {
      expect(NOISE_QUESTIONS[question].ask.length).toBeLessThanOrEqual(100);
      expect(NOISE_QUESTIONS[question].ask).toMatch(/\?$/);
    }
  });
});

describe('candidates are counted, not weighed', () => {
  test('least against first, then most for, then the order of the desk; none is dropped', () => {
    const candidates = weigh([
      fact('one', ['lobe', 'tip'], ['nut-lock']),
      fact('two', ['lobe'], ['nut-lock', 'oil']),
    ]);
    expect(candidates.map(({ cause }) => cause).toSorted()).toEqual([...CAUSE_NAMES].toSorted());
    expect(candidates.slice(0, 3).map(({ cause }) => cause)).toEqual(['lobe', 'tip', 'stud-top']);
    expect(candidates.slice(-2).map(({ cause }) => cause)).toEqual(['oil', 'nut-lock']);
    expect(remaining(candidates)).toHaveLength(CAUSE_NAMES.length - 2);
  });

  test('where something speaks against each, those with least against them remain', () => {
    const all = [...CAUSE_NAMES];
    const candidates = weigh([fact('one', [], all), fact('two', [], all.slice(1))]);
    expect(remaining(candidates).map(({ cause }) => cause)).toEqual([all[0]]);
  });
});

describe('what was itself seen bad', () => {
  const facts = [
    { ...fact('seen', ['roller'], []), shows: ['roller'] as const },
    fact('one', ['lobe', 'tip'], ['roller', 'oil']),
    fact('two', ['lobe'], ['roller']),
  ];

  test('comes first and remains, however much is counted against it', () => {
    const candidates = weigh(facts);
    expect(candidates.slice(0, 3).map(({ cause }) => cause)).toEqual(['roller', 'lobe', 'tip']);
    expect(candidates.filter(({ seen }) => seen).map(({ cause }) => cause)).toEqual(['roller']);
    // All but the oil, which was not seen and has something against it.
    expect(remaining(candidates)).toHaveLength(CAUSE_NAMES.length - 1);
  });

  test('is asked after, three facts behind or not', () => {
    const first = ['one', 'two', 'three'].map((key) => fact(key, ['lobe'], []));
    const second = fact('four', ['tip'], []);
    const shown = { ...fact('five', [], []), shows: ['roller'] as const };
    // Three for the lobe, one for the tip, none for the others (judgement, no published source: three behind is far).
    const near = (given: readonly Fact[]) => contenders(weigh(given)).map(({ cause }) => cause);
    expect(near([...first, second])).toEqual(['lobe', 'tip']);
    expect(near([...first, second, shown])).toEqual(['roller', 'lobe', 'tip']);
    expect(near(first.slice(1))).toEqual(weigh(first.slice(1)).map(({ cause }) => cause));
  });

  test('of none there is nobody to ask after', () => {
    expect(contenders([])).toEqual([]);
  });
});

describe('what a check parts', () => {
  const causes: readonly CauseName[] = ['tip', 'lobe', 'oil', 'spring'];

  test('by hand: one of four told from the rest is three pairs; for, against and two left alone is five', () => {
    expect(pairsParted([{ for: ['tip'], against: [] }], causes)).toBe(3);
    expect(pairsParted([{ for: ['tip'], against: ['lobe'] }], causes)).toBe(5);
    // The mean of its effects: three and five.
    expect(
      pairsParted(
        [
          { for: ['tip'], against: [] },
          { for: ['tip'], against: ['lobe'] },
        ],
        causes,
      ),
    ).toBe(4);
    expect(pairsParted([{ for: causes, against: [] }], causes)).toBe(0);
    expect(pairsParted([], causes)).toBe(0);
  });

  test('one effect of several is enough to part two causes', () => {
    const effects = [
      { for: ['tip', 'lobe'], against: [] },
      { for: ['tip'], against: [] },
    ] as const;
    expect(parts(effects, 'tip', 'lobe')).toBe(true);
    expect(parts(effects, 'oil', 'spring')).toBe(false);
  });

  test('every pair counted one by one gives the same, for every question', () => {
    for (const question of QUESTIONS) {
      const own = possibleEffects(question);
      const pairs = CAUSE_NAMES.flatMap((a, index) =>
        CAUSE_NAMES.slice(index + 1).map((b) => [a, b] as const),
      );
      const counted = own.map((effect) => pairs.filter(([a, b]) => parts([effect], a, b)).length);
      const mean = counted.reduce((sum, each) => sum + each, 0) / own.length;
      expect(pairsParted(own, CAUSE_NAMES), question).toBeCloseTo(mean, 12);
    }
  });
});
