import { describe, expect, test } from 'vitest';
import { type Plain, pathsIn, valueAt, withAt } from '../../../mutation/corpus/plain-data.ts';
import { isSame } from '../../../mutation/corpus/same-said.ts';
import { asPlain, varied } from '../../../mutation/corpus/varied.ts';
import { vocabularyOf } from '../../../mutation/corpus/vocabulary.ts';
import { weighed } from '../../../mutation/corpus/weighed.ts';
import { usualEvidence } from '../../../tools/told/kept.ts';
import { chanceFrom } from '../../explain-readings/random.ts';

describe('a condition with faults is weighed', () => {
  const put =
    'const a = stryMutAct_9fa48("3") ? x < y : stryMutAct_9fa48("2") ? false : stryMutAct_9fa48("1") ? f(x) : (stryCov_9fa48("1", "2", "3"), x <= y);';

  test('with what it would be, but for what has to be called for it', () => {
    const { text, ids } = weighed('a.ts', put);
    expect(ids).toEqual(['3', '2']);
    expect(text).toContain('(stryCov_9fa48("1", "2", "3"), weighCondition(x <= y, "3", x < y, "2", false))');
  });

  test('and is what it was', () => {
    const otherwise = new Set<string>();
    globalThis.comesOutOtherwise = otherwise;
    const is = globalThis.weighCondition(true, '3', true, '2', false);
    globalThis.comesOutOtherwise = undefined;
    expect(is).toBe(true);
    expect([...otherwise]).toEqual(['2']);
  });
});

describe('data is changed at a place', () => {
  const build: Plain = { lash: [{ id: 'a', gap: { value: 1 } }, { id: 'b' }], call: { goal: 'noise' } };

  test('and nowhere else', () => {
    expect(withAt(build, ['lash', 0, 'gap', 'value'], 2)).toEqual({
      ...build,
      lash: [{ id: 'a', gap: { value: 2 } }, { id: 'b' }],
    });
    expect(withAt(build, ['lash', 0], undefined)).toEqual({ ...build, lash: [{ id: 'b' }] });
    expect(withAt(build, ['call', 'goal'], undefined)).toEqual({ ...build, call: {} });
  });

  test('every place of it is found', () => {
    expect(pathsIn(build).map((path) => path.join('.'))).toContain('lash.0.gap.value');
    expect(valueAt(build, ['lash', 1, 'id'])).toBe('b');
    expect(valueAt(build, ['lash', 7, 'id'])).toBeUndefined();
  });
});

test('the same seed varies a build alike, and another otherwise', () => {
  const usual = asPlain(usualEvidence());
  const words = vocabularyOf([usual, withAt(usual, ['call', 'goal'], 'noise-or-failure')]);
  const drawn = (seed: number) => {
    const chance = chanceFrom(seed);
    return Array.from({ length: 20 }, () => varied(usual, chance, words));
  };
  expect(drawn(3)).toEqual(drawn(3));
  expect(drawn(3)).not.toEqual(drawn(4));
});

test('two answers are the same where nothing that is written down of them is otherwise', () => {
  expect(isSame({ a: [1, 0.1 + 0.2], b: undefined }, { a: [1, 0.3] })).toBe(true);
  expect(isSame({ a: [1, 2] }, { a: [1] })).toBe(false);
  expect(isSame({ a: 1 }, { a: 1.00001 })).toBe(false);
  expect(isSame({ a: 1 }, undefined)).toBe(false);
});
