import { describe, expect, test } from 'vitest';
import { IN, MM } from '../../../server/mechanics/kit/si.ts';
import {
  alikeChance,
  chanceOfSoMany,
  divisionOf,
  sameDivisionChance,
} from '../../../server/mechanics/valve-sheet/honest-repeats.ts';
import { chanceFrom } from '../explain-readings/random.ts';

describe('readings that are equal honestly', () => {
  test.each([
    [0.001, 0.0005],
    [0.0005, 0.0005],
    [0.0001, 0.0005],
    [0.001, 0.0015],
  ])(
    'two passes read to %f with a scatter of %f: 40 000 pairs thrown, an independent method',
    (g, scatter) => {
      const chance = chanceFrom(20_260_301);
      let alike = 0;
      const pairs = 40_000;
      for (let pair = 0; pair < pairs; pair += 1) {
        const lift = 0.56 + chance.between(0, g);
        const read = () => Math.round((lift + chance.normal(scatter)) / g);
        const [one, two] = [read(), read()];
        if (one === two) alike += 1;
      }
      expect(alikeChance(g * IN, scatter * IN)).toBeCloseTo(alike / pairs, 2);
    },
  );

  test('the middle division of one standard deviation to either side holds .6827: normal table', () => {
    expect(sameDivisionChance(0.001 * IN, 0.0005 * IN)).toBeCloseTo(0.6827, 4);
  });

  test('binomial: 8 of 8 at ½ is 1/256, 7 or more is 9/256, by counting', () => {
    expect(chanceOfSoMany(8, 8, 0.5)).toBeCloseTo(1 / 256, 12);
    expect(chanceOfSoMany(8, 7, 0.5)).toBeCloseTo(9 / 256, 12);
    expect(chanceOfSoMany(8, 0, 0.3)).toBeCloseTo(1, 12);
  });

  test('the division is the coarsest that all of them are whole numbers of', () => {
    expect(divisionOf([0.56 * IN, 0.561 * IN])).toBe(0.001 * IN);
    expect(divisionOf([0.56 * IN, 0.5615 * IN])).toBe(0.0005 * IN);
    expect(divisionOf([0.56 * IN, 0.5613 * IN])).toBe(0.0001 * IN);
    expect(divisionOf([14.22 * MM, 14.37 * MM])).toBe(0.01 * MM);
  });
});
