import { describe, expect, test } from 'vitest';
import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import { LAWS } from './all.ts';
import { buildOf } from './builds.ts';
import type { Assessed } from './law.ts';
import { MUTANTS } from './mutants.ts';

const FEW = 80;
const builds: Assessed[] = Array.from({ length: FEW }, (_, index) => {
  const evidence = buildOf(index + 1);
  return { seed: index + 1, evidence, assessment: assess(evidence) };
});

/** A law that finds nothing wrong in a broken assessment would hold anything. */
describe('each law can fail', () => {
  const cases = Object.entries(LAWS).flatMap(([name, law]) =>
    Object.entries(MUTANTS)
      .filter(([of]) => of === name)
      .flatMap(([, mutants]) => mutants.map((mutant, index) => ({ name, law, mutant, index }))),
  );

  test.for(cases)('$name, fault $index', ({ law, mutant }) => {
    const broken = builds.flatMap((assessed) => {
      const assessment = mutant(assessed);
      return assessment === undefined ? [] : [{ ...assessed, assessment }];
    });
    expect(broken.length, 'a build that can be broken so').toBeGreaterThan(0);
    expect(broken.some((assessed) => law(assessed).length > 0)).toBe(true);
  });

  test('every law has a fault of its own', () => {
    expect(Object.keys(MUTANTS).sort()).toEqual(Object.keys(LAWS).sort());
  });
});
