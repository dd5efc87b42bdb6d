import { describe, expect, test } from 'vitest';
import { computation } from '../../../server/mechanics/computations/gap-scan.ts';
import { describeContract } from '../helpers/bad-input.ts';
import { inches } from '../helpers/quantities.ts';
import { runner } from '../helpers/runner.ts';
import { type Pair, parabola, scan } from '../helpers/scan.ts';
import { expectSoundUnderFire } from '../helpers/under-fire.ts';

const { number, faults } = runner(computation);

describe('what is sent', () => {
  const body = scan(
    [
      [8, 0.0905],
      [10, 0.09],
      [12, 0.0905],
    ],
    { readingUncertainty: inches(0.002), limit: inches(0.08), side: 'intake' },
  );

  test('each fault of a reading at its own place', () => {
    const [first, second, third] = body.readings;
    const bad = [first, { crankAngle: second?.crankAngle, gap: inches(-0.01) }, { ...third, colour: 1 }, {}];
    expect(faults({ ...body, readings: bad })).toEqual([
      '/readings/1/gap out-of-range',
      '/readings/2/colour unknown-field',
      '/readings/3/crankAngle required',
      '/readings/3/gap required',
    ]);
    expect(faults({ ...body, readings: Array(2001).fill(first) })).toEqual(['/readings too-many']);
  });

  test('two thousand readings are taken', () => {
    const many = Array.from({ length: 2000 }, (_, index): Pair => {
      const at = (index - 1000) / 100;
      return [at, parabola(0.1, 0, 0.0002)(at)];
    });
    expect(number(scan(many), 'least')).toBeCloseTo(0.1, 9);
  });

  test('whatever is sent', () => expectSoundUnderFire(computation, body));

  describeContract(computation, {
    body,
    quantities: { readingUncertainty: 'in', limit: 'in' },
    optional: ['readingUncertainty', 'limit', 'side'],
  });
});
