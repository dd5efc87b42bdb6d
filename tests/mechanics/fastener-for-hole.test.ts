import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { computation } from '../../server/mechanics/computations/fastener-for-hole.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { inches, mm } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';

const { run, number, faults } = runner(computation);

const listed = z.array(z.object({ designation: z.string(), fit: z.string() }));
const fits = (body: object): Record<string, string> =>
  Object.fromEntries(
    listed.parse(partOf(run(body).result, 'fasteners')).map(({ designation, fit }) => [designation, fit]),
  );
const order = (body: object) => Object.keys(fits(body));
const with_ = (body: object, fit: string) => order(body).filter((name) => fits(body)[name] === fit);
const ask = (body: object) => partOf(run(body).result, 'ask');
const hole = (value: number) => ({ hole: inches(value) });

const ALL = [
  '5/16-18 UNC',
  '5/16-24 UNF',
  'M8×1.25',
  '3/8-16 UNC',
  '3/8-24 UNF',
  '7/16-14 UNC',
  '7/16-20 UNF',
];

describe('what a hole was made for (sizes and bands: common practice, no published source)', () => {
  test('.4355 is the usual caliper reading of a 7/16 hole, nothing near 3/8', () => {
    expect(with_(hole(0.4355), 'agrees').sort()).toEqual(['7/16-14 UNC', '7/16-20 UNF']);
    expect(with_(hole(0.4355), 'cannot-tell')).toEqual([]);
    expectNear(number(hole(0.4355), 'fasteners.0.offset'), -0.002);
    expectNear(number(hole(0.4355), 'fasteners.0.nominal'), 0.4375);
  });

  test('5/16 and 8 mm share their band: both are listed, and the pitch is asked', () => {
    for (const read of [0.311, 0.3125, 0.314, 0.315]) {
      expect(with_(hole(read), 'agrees').sort()).toEqual(['5/16-18 UNC', '5/16-24 UNF', 'M8×1.25']);
      expect(ask(hole(read))).toBe('the pitch: 18 or 24 threads to the inch, or 1.25 mm?');
    }
  });

  test('coarse and fine of one size have one hole: the pitch is asked there too', () => {
    expect(ask(hole(0.375))).toBe('the pitch: 16 or 24 threads to the inch?');
    expect(ask(hole(0.4375))).toBe('the pitch: 14 or 20 threads to the inch?');
  });

  test.each([
    // The printed rows of each band, just inside and just outside.
    ['5/16-18 UNC', 0.3085, 0.3165, 0.3045, 0.3245],
    ['3/8-16 UNC', 0.371, 0.379, 0.367, 0.387],
    ['7/16-14 UNC', 0.4335, 0.4415, 0.4295, 0.4495],
  ])('%s agrees from %d to %d, can’t be told from %d to %d', (name, low, high, lowest, highest) => {
    for (const inside of [low, high]) expect(fits(hole(inside))[name]).toBe('agrees');
    for (const doubtful of [low - 1e-5, high + 1e-5, lowest, highest]) {
      expect(fits(hole(doubtful))[name]).toBe('cannot-tell');
    }
    for (const outside of [lowest - 1e-5, highest + 1e-5]) expect(fits(hole(outside))[name]).toBe('differs');
  });

  test('8 mm is .31496 in, not .315: its band goes by the exact size', () => {
    expectNear(number({ hole: mm(8), pitch: mm(1.25) }, 'fasteners.0.offset', 'metric') + 1, 1);
    expect(fits({ hole: mm(8 + 0.1016) })['M8×1.25']).toBe('agrees');
    expect(fits({ hole: mm(8 + 0.1018) })['M8×1.25']).toBe('cannot-tell');
    expect(fits({ hole: mm(8 - 0.2032) })['M8×1.25']).toBe('cannot-tell');
    expect(fits({ hole: mm(8 - 0.2034) })['M8×1.25']).toBe('differs');
  });

  test('no two sizes meet but 5/16 and 8 mm', () => {
    for (let read = 0.29; read < 0.46; read += 0.0005) {
      const reach = [...with_(hole(read), 'agrees'), ...with_(hole(read), 'cannot-tell')];
      const sizes = new Set(reach.map((name) => name.replace(/[-×].*/, '')));
      if (sizes.size > 1) expect([...sizes].sort()).toEqual(['5/16', 'M8']);
    }
  });

  test('a hole between the sizes: every one differs, none is asked after, and a stud is to be tried', () => {
    expect(with_(hole(0.4), 'differs').sort()).toEqual([...ALL].sort());
    expect(ask(hole(0.4))).toBeUndefined();
    expect(run(hole(0.4)).cautions.join()).toContain('None of these');
    expect(run(hole(0.375)).cautions.join()).not.toContain('None of these');
  });

  test('the thread’s limits come along, not the hole’s', () => {
    const body = { hole: inches(0.4355), pitch: inches(0.05) };
    expectNear(number(body, 'fasteners.0.threadMajorMax'), 0.4362);
    expectNear(number(body, 'fasteners.0.threadMajorMin'), 0.4281);
  });

  test('a caution says that the thread decides', () => {
    expect(run(hole(0.375)).cautions.join()).toContain('its thread decides');
  });
});

describe('a known pitch', () => {
  test.each([
    [0.3125, '18 tpi', '5/16-18 UNC'],
    [0.3125, '24 tpi', '5/16-24 UNF'],
    [0.3125, '1.25 mm', 'M8×1.25'],
    [0.3125, '.049 in', 'M8×1.25'],
    [0.375, '16 threads per inch', '3/8-16 UNC'],
    [0.4355, '.050 in', '7/16-20 UNF'],
    [0.4355, '20 TPI', '7/16-20 UNF'],
  ])('%d in and %s is %s', (read, pitch, wanted) => {
    const body = { hole: inches(read), pitch };
    expect(order(body)[0]).toBe(wanted);
    expect(with_(body, 'agrees')).toEqual([wanted]);
    expect(ask(body)).toBeUndefined();
  });

  test('the fit stays that of the hole alone', () => {
    const body = { hole: inches(0.3125), pitch: '20 tpi' };
    expect(fits(body)).toEqual({ '7/16-20 UNF': 'differs' });
    expect(run(body).cautions.join()).toContain('None of these');
  });

  test('a pitch of no thread of the table leaves none', () => {
    expect(order({ hole: inches(0.3125), pitch: mm(0.75) })).toEqual([]);
  });

  test('what is no pitch is refused', () => {
    const pitched = (pitch: unknown) => faults({ ...hole(0.375), pitch });
    expect(pitched('20')).toEqual(['/pitch wrong-dimension']);
    expect(pitched('0 tpi')).toHaveLength(1);
    expect(pitched('many tpi')).toEqual(['/pitch not-a-number']);
    expect(pitched(`${'9'.repeat(100_000)} tpi`)).toEqual(['/pitch not-allowed']);
  });
});

describe('a reading band of one’s own', () => {
  const banded = (read: number, below: number, above: number) => ({
    ...hole(read),
    readingBand: { below: inches(below), above: inches(above) },
  });

  test('narrower: agrees in it alone, in doubt as far as ever', () => {
    expect(fits(banded(0.3745, 0.0005, 0.001))['3/8-16 UNC']).toBe('agrees');
    expect(fits(banded(0.3744, 0.0005, 0.001))['3/8-16 UNC']).toBe('cannot-tell');
    expect(fits(banded(0.3761, 0.0005, 0.001))['3/8-16 UNC']).toBe('cannot-tell');
    expect(fits(banded(0.388, 0.0005, 0.001))['3/8-16 UNC']).toBe('differs');
    expectNear(number(banded(0.375, 0.0005, 0.001), 'band.above'), 0.001);
    expectNear(number(banded(0.375, 0.0005, 0.001), 'doubt.above'), 0.012);
  });

  test('wider than the doubt: it reaches as far', () => {
    expect(fits(banded(0.36, 0.015, 0.02))['3/8-16 UNC']).toBe('agrees');
    expectNear(number(banded(0.36, 0.015, 0.02), 'doubt.below'), 0.015);
  });

  test('the default is .004 in either way', () => {
    expectNear(number(hole(0.375), 'band.below'), 0.004);
    expectNear(number(hole(0.375), 'band.above'), 0.004);
  });

  test('both sides are needed, neither negative', () => {
    const given = (readingBand: unknown) => faults({ ...hole(0.375), readingBand });
    expect(given({ below: inches(0.001) })).toEqual(['/readingBand/above required']);
    expect(given({ below: inches(-0.001), above: inches(0) })).toEqual(['/readingBand/below out-of-range']);
    expect(given({ below: inches(0.001), above: inches(0.001), beside: 1 })).toEqual([
      '/readingBand/beside unknown-field',
    ]);
    expect(given(7)).toEqual(['/readingBand not-allowed']);
  });
});

test('the likeliest first, the same in millimetres, and every size always listed', () => {
  const rank = ['agrees', 'cannot-tell', 'differs'];
  fc.assert(
    fc.property(fc.double({ min: 0.25, max: 0.5, noNaN: true }), (read) => {
      const found = fits(hole(read));
      expect(Object.keys(found).sort()).toEqual([...ALL].sort());
      const ranks = Object.values(found).map((fit) => rank.indexOf(fit));
      expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
      expect(fits({ hole: mm(read * 25.4) })).toEqual(found);
    }),
  );
});

describeContract(computation, {
  body: { ...hole(0.4355), pitch: inches(0.05) },
  quantities: { hole: 'in', pitch: 'in' },
  optional: ['pitch'],
});
