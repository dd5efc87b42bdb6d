import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/lash-hot-cold.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { celsius, inches, mm } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';

const { run, number, faults } = runner(computation);
const perKelvin = (value: number) => ({ expansion: { value, unit: '1/K' as const } });

const body = {
  hotLash: inches(0.02),
  temperatureRise: celsius(70),
  ratio: 1.5,
  heights: {
    block: inches(4.5),
    head: inches(5.2),
    seat: inches(0.4),
    valve: inches(5),
    pushrod: inches(9.7),
  },
  materials: {
    block: 'grey-iron',
    head: 'aluminium-356',
    pushrod: perKelvin(12.3e-6),
    valve: perKelvin(11.7e-6),
  },
};
const made = (block: string, head: string) => ({ ...body, materials: { ...body.materials, block, head } });

describe('lash hot and cold', () => {
  test.each([
    // By hand with the expansions of Callister, table B.6; the trade rule: add .002, subtract .006, subtract .012.
    ['grey-iron', 'grey-iron', -0.00118, 0.002],
    ['grey-iron', 'aluminium-356', 0.00773, -0.006],
    ['aluminium-356', 'aluminium-356', 0.0125, -0.012],
  ])('%s block, %s head: %d in from cold to hot; the trade sets %d cold', (block, head, change, rule) => {
    const found = number(made(block, head), 'lashChange');
    expect(found).toBeCloseTo(change, 5);
    const setting = number(made(block, head), 'coldLash') - 0.02;
    expectNear(setting, -found);
    // A cold-lash chart of the trade: the sign agrees, the size within .002 in.
    expect(Math.sign(setting)).toBe(Math.sign(rule));
    expect(Math.abs(setting - rule)).toBeLessThan(0.002);
  });

  test('by what people call them, and without heights those of an ordinary engine, which is said', () => {
    const { heights: _, ...rest } = made('Cast iron', 'aluminum');
    expectNear(number(rest, 'lashChange'), number(made('grey-iron', 'aluminium-356'), 'lashChange'));
    expect(run(rest).cautions.join()).toContain('a guess for this one');
    expect(run(body).cautions.join()).not.toContain('a guess');
    const pushrod = (called: string) =>
      number({ ...body, materials: { ...body.materials, pushrod: called } }, 'lashChange');
    // Callister, table B.6: 23.6, 12.3 and 8.6 millionths; 9.7 in of it, by 1.5 and 70 K.
    expect(pushrod('steel') - pushrod('aluminium-6061')).toBeCloseTo((70 * 1.5 * 9.7 * 11.3) / 1e6, 9);
    expect(pushrod('titanium') - pushrod('steel')).toBeCloseTo((70 * 1.5 * 9.7 * 3.7) / 1e6, 9);
  });

  test('a gap found cold, hot: .018 and the growth; nothing left of it is warned of', () => {
    const found = { ...body, coldFound: inches(0.018) };
    expectNear(number(found, 'hotAsFound'), 0.018 + number(body, 'lashChange'));
    expect(run(body).result).not.toHaveProperty('hotAsFound');
    const iron = { ...made('iron', 'iron'), coldFound: inches(0.001) };
    expect(run(iron).cautions.join()).toContain('would be held off its seat');
    expect(run(found).cautions.join()).not.toContain('would be held off its seat');
  });

  test('what is printed for the pair is told beside it, both ways', () => {
    expect(run(made('iron', 'iron')).cautions.join()).toContain('set .002 in more cold');
    expect(run(made('iron', 'aluminium')).cautions.join()).toContain('grows by .005 to .007 in');
    expect(run(made('aluminium', 'aluminium')).cautions.join()).toContain('set .012 in less cold');
    expect(run(made('aluminium', 'iron')).cautions.join()).not.toContain('Printed for');
  });

  test('ten inches of aluminium against iron, 70 °C: .007070 in (Callister, table B.6)', () => {
    // Head of 5 in on the pivot’s lever (1 + 1) against a pushrod of 10 in, ratio 1: the bars stand side by side.
    const bars = {
      ...body,
      ratio: 1,
      heights: {
        ...body.heights,
        block: inches(1e-9),
        head: inches(5),
        seat: inches(0),
        valve: inches(1e-9),
        pushrod: inches(10),
      },
      materials: { block: 'grey-iron', head: 'aluminium-356', pushrod: 'grey-iron', valve: 'grey-iron' },
    };
    expect(number(bars, 'lashChange')).toBeCloseTo(0.00707, 9);
  });

  test('the ratio counts at the head: without the (1 + r) the iron and aluminium engine would close up', () => {
    const mutant = (70 * (1.5 * 11.4 * 4.5 + 21.5 * (5.2 - 0.4) - 1.5 * 12.3 * 9.7 - 11.7 * 5)) / 1e6;
    expect(mutant).toBeLessThan(0);
    expect(number(body, 'lashChange')).toBeGreaterThan(0.007);
  });

  test('a rise in °F is five ninths of one in °C', () => {
    expectNear(
      number({ ...body, temperatureRise: { value: 126, unit: 'degF' } }, 'lashChange'),
      number(body, 'lashChange'),
    );
    expectNear(
      number({ ...body, temperatureRise: { value: 70, unit: 'K' } }, 'lashChange'),
      number(body, 'lashChange'),
    );
  });

  test('no rise, no change', () => {
    expect(number({ ...body, temperatureRise: celsius(0) }, 'lashChange')).toBe(0);
    expectNear(number({ ...body, temperatureRise: celsius(0) }, 'coldLash'), 0.02);
  });

  test('a cold setting below zero is told and warned of, not cut off', () => {
    const tight = { ...body, hotLash: inches(0.005) };
    expect(number(tight, 'coldLash')).toBeLessThan(-0.002);
    expect(run(tight).cautions.join()).toContain('held open');
    expect(run(body).cautions.join()).not.toContain('held open');
  });

  test('it follows from the heights of pivot, cup and tip, each grown on its own', () => {
    const height = fc.double({ min: 0.1, max: 20, noNaN: true });
    const alpha = fc.double({ min: 0, max: 30e-6, noNaN: true });
    const input = fc.record({
      b: height,
      h: height,
      s: height,
      v: height,
      p: height,
      ab: alpha,
      ah: alpha,
      ap: alpha,
      av: alpha,
      r: fc.double({ min: 0.8, max: 2.2, noNaN: true }),
      rise: fc.double({ min: 0, max: 300, noNaN: true }),
    });
    fc.assert(
      fc.property(input, ({ b, h, s, v, p, ab, ah, ap, av, r, rise }) => {
        const lash = (t: number) => {
          const grown = (length: number, a: number) => length * (1 + a * t);
          const pivot = grown(b, ab) + grown(h, ah);
          const tip = grown(b, ab) + grown(s, ah) + grown(v, av);
          return (1 + r) * pivot - r * grown(p, ap) - tip;
        };
        const materials = {
          block: perKelvin(ab),
          head: perKelvin(ah),
          pushrod: perKelvin(ap),
          valve: perKelvin(av),
        };
        const shared = { temperatureRise: celsius(rise), ratio: r, materials };
        const inInches = {
          ...shared,
          hotLash: inches(0.02),
          heights: {
            block: inches(b),
            head: inches(h),
            seat: inches(s),
            valve: inches(v),
            pushrod: inches(p),
          },
        };
        const inMm = {
          ...shared,
          hotLash: mm(0.508),
          heights: {
            block: mm(b * 25.4),
            head: mm(h * 25.4),
            seat: mm(s * 25.4),
            valve: mm(v * 25.4),
            pushrod: mm(p * 25.4),
          },
        };
        const wanted = lash(rise) - lash(0);
        expect(number(inInches, 'lashChange')).toBeCloseTo(wanted, 12);
        expect(number(inMm, 'lashChange', 'metric')).toBeCloseTo(wanted * 25.4, 10);
        expect(number(inMm, 'coldLash')).toBeCloseTo(0.02 - wanted, 12);
      }),
    );
  });
});

describe('materials', () => {
  const block = (material: unknown) => ({ ...body, materials: { ...body.materials, block: material } });

  test.each([
    'grey-iron',
    'Grey Iron',
    'gray iron',
    { expansion: '11.4e-6 1/K' },
    '11.4e-6 1/K',
    perKelvin(11.4e-6),
  ])('%j is grey iron', (material) => {
    expectNear(number(block(material), 'lashChange'), number(body, 'lashChange'), 1e-12);
  });

  test.each([
    ['magnesium', '/materials/block not-allowed'],
    ['__proto__', '/materials/block not-allowed'],
    ['toString', '/materials/block not-allowed'],
    ['', '/materials/block required'],
    [11.4e-6, '/materials/block not-allowed'],
    [null, '/materials/block not-allowed'],
    [['grey-iron'], '/materials/block not-allowed'],
    [{}, '/materials/block/expansion required'],
    [{ expansion: 11.4e-6 }, '/materials/block/expansion wrong-dimension'],
    [{ expansion: { value: 11.4e-6 } }, '/materials/block/expansion/unit required'],
    [{ expansion: { value: -1e-6, unit: '1/K' } }, '/materials/block/expansion out-of-range'],
    [{ expansion: { value: 1, unit: '1/K' } }, '/materials/block/expansion impossible-input'],
    [{ expansion: { value: 1, unit: 'in' } }, '/materials/block/expansion wrong-dimension'],
    [{ name: 'grey-iron' }, '/materials/block/name unknown-field'],
    ['x'.repeat(100_000), '/materials/block not-allowed'],
  ])('%j is refused', (material, fault) => {
    expect(faults(block(material))).toEqual([fault]);
  });

  test('each missing part is asked for at its own place', () => {
    expect(faults({ ...body, materials: {} })).toEqual([
      '/materials/block required',
      '/materials/head required',
      '/materials/pushrod required',
      '/materials/valve required',
    ]);
    expect(faults({ ...body, heights: { ...body.heights, seat: undefined, valve: 5 } })).toEqual([
      '/heights/seat required',
      '/heights/valve wrong-dimension',
    ]);
    expect(faults({ ...body, heights: { ...body.heights, cup: inches(1) } })).toEqual([
      '/heights/cup unknown-field',
    ]);
  });
});

describeContract(computation, {
  body,
  quantities: { hotLash: 'in', temperatureRise: 'degC' },
  numbers: ['ratio'],
  optional: ['heights'],
});
