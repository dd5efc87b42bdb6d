import { describe, expect, test } from 'vitest';
import { computation } from '../../../server/mechanics/computations/gap-scan.ts';
import { expectNear } from '../helpers/near.ts';
import { inches } from '../helpers/quantities.ts';
import { partOf, runner } from '../helpers/runner.ts';
import { type Pair, parabola, scan } from '../helpers/scan.ts';

const { run, number } = runner(computation);

describe('steps', () => {
  const ask = (pairs: readonly Pair[]) => partOf(run(scan(pairs)).result, 'ask');
  const gap = parabola(0.1, 1, 0.0002);
  const every = (...angles: readonly number[]) => angles.map((at): Pair => [at, gap(at)]);

  test('over 5° beside the least is wide, 5° is not, and elsewhere it does not matter', () => {
    expect(ask(every(-10, -5, 0, 5, 10))).toBeUndefined();
    expect(ask(every(-12, -6, 0, 5, 10))).toBe(
      'The steps beside the least gap are wide: read every 2° between 6° before TDC and 5° after TDC.',
    );
    expect(ask(every(-40, -4, 0, 4, 40))).toBeUndefined();
  });

  test('uneven so that an error counts more than once and a half', () => {
    expect(
      ask([
        [9.5, 0.104],
        [10, 0.1],
        [15, 0.1001],
      ]),
    ).toContain('uneven');
    expect(ask(every(-1, 0, 3))).toBeUndefined();
  });
});

describe('limit and verdict', () => {
  const three: Pair[] = [
    [8, 0.0905],
    [10, 0.09],
    [12, 0.0905],
  ];
  const verdict = (more: object) => partOf(run(scan(three, more)).result, 'verdict');

  test('.080 intake, .100 exhaust (trade press, usual figures); not said, the wider', () => {
    expectNear(number(scan(three, { side: 'intake' }), 'limit'), 0.08);
    expectNear(number(scan(three, { side: 'exhaust' }), 'limit'), 0.1);
    expectNear(number(scan(three), 'limit'), 0.1);
    expect(run(scan(three)).assumptions.join()).toContain('intake or exhaust not said');
    expect([verdict({ side: 'intake' }), verdict({}), verdict({ limit: inches(0.09) })]).toEqual([
      'clear',
      'short',
      'clear',
    ]);
  });

  test('with its interval: at 10° the middle reading alone counts, .002', () => {
    const more = { readingUncertainty: inches(0.002) };
    expectNear(number(scan(three, more), 'interval95.0'), 0.088);
    expectNear(number(scan(three, more), 'interval95.1'), 0.092);
    expect(verdict({ ...more, limit: inches(0.088) })).toBe('clear');
    expect(verdict({ ...more, limit: inches(0.0881) })).toBe('close');
    expect(verdict({ ...more, limit: inches(0.0921) })).toBe('short');
  });

  test('a parabola that goes below nothing is a contact', () => {
    const touch = scan([
      [8, 0.01],
      [10, 0],
      [12, 0.005],
    ]);
    expect(number(touch, 'least')).toBeLessThan(0);
    expect(run(touch).cautions.join()).toContain('would meet');
    expect(run(touch).result).not.toHaveProperty('ask');
    const atEnd = scan([
      [8, 0.01],
      [10, 0.004],
      [12, 0],
    ]);
    expect(partOf(run(atEnd).result, 'ask')).toContain('turn no further');
  });

  test('readings that rise by less than they err are told', () => {
    const noisy = (uncertainty: number) =>
      run(scan(three, { readingUncertainty: inches(uncertainty) })).cautions.join();
    expect(noisy(0.002)).toContain('rather too small');
    expect(noisy(0.0003)).not.toContain('rather too small');
  });
});
