import { expect, test } from 'vitest';
import { isTurning } from '../../server/records/workings/turning.ts';
import { adjuster } from '../../server/steps/adjuster/parts.ts';
import { geometry } from '../../server/steps/geometry/parts.ts';
import { timing } from '../../server/steps/timing/parts.ts';

/* What a page holds back under a stop JSON refuses, and what it shows JSON takes: one rule, from either side. */
const PARTS = [...adjuster.parts, ...geometry.parts, ...timing.parts].flatMap(({ name, turns, computed }) =>
  computed === undefined ? [] : [{ name, turns, computation: computed.computation }],
);

test.each(PARTS)('$name is held back by its page and refused by JSON alike', ({ turns, computation }) => {
  expect(isTurning(computation)).toBe(turns);
});

test('there are parts of both kinds', () => {
  expect(new Set(PARTS.map(({ turns }) => turns)).size).toBe(2);
});
