import { describe, expect, test } from 'vitest';
import { computation as centreline } from '../../../server/mechanics/computations/centreline.ts';
import { runner } from '../../mechanics/helpers/runner.ts';

describe('from which side of top dead centre', () => {
  const { refused, run, number } = runner(centreline);
  const inputs = (before: number, after: number, side: string) => ({
    before: `${before} deg`,
    after: `${after} deg`,
    side,
  });

  test.each([
    ['an exhaust without its minus', 70, 160, 'exhaust'],
    ['another', 55, 149, 'exhaust'],
    ['an intake told before TDC', -150, -66, 'intake'],
    ['an intake read on a lobe a turn away', 210, 290, 'intake'],
  ])('%s is refused, and told how it is written', (_, before, after, side) => {
    expect(refused(inputs(before, after, side))).toEqual([
      '/before impossible-input',
      '/after impossible-input',
    ]);
    expect(() => run(inputs(before, after, side))).toThrow();
  });

  test('the exhaust the other way round is told how it is written', () => {
    expect(refused(inputs(160, 70, 'exhaust'))).toHaveLength(2);
  });

  test('written as it is asked for it is 115 before TDC; so is one counted on', () => {
    expect(number(inputs(-160, -70, 'exhaust'), 'centreline')).toBeCloseTo(115, 9);
    expect(number(inputs(200, 290, 'exhaust'), 'centreline')).toBeCloseTo(115, 9);
  });
});
