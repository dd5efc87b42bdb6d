import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/thread.ts';
import { THREADS } from '../../server/mechanics/threads/thread-table.ts';
import { InputFaults } from '../../shared/problems/faults.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { partOf, runner } from './helpers/runner.ts';

const { run, number, faults } = runner(computation);
const of = (designation: string) => ({ designation });

/** ASME B1.1 rounds allowance and tolerance to four places, halves upward. */
const fourPlaces = (inches: number) => Math.round(inches * 1e4 + 1e-9) / 1e4;

/** Class 2A limits of the major diameter by the formulas of ASME B1.1; `engagement` is the diameter for UNC and UNF. */
function class2A(d: number, threadsPerInch: number, engagement = d): { max: number; min: number } {
  const pitch = 1 / threadsPerInch;
  const pitchTolerance = 0.0015 * Math.cbrt(d) + 0.0015 * Math.sqrt(engagement) + 0.015 * pitch ** (2 / 3);
  const max = d - fourPlaces(0.3 * pitchTolerance);
  return { max, min: max - fourPlaces(0.06 * pitch ** (2 / 3)) };
}

describe('class 2A', () => {
  test.each([
    // Machinery’s Handbook, 31st ed., worked example of 1/2-28 UNEF, and printed rows of the small sizes.
    [0.5, 28, 9 / 28, 0.4989, 0.4924],
    [0.06, 80, 0.06, 0.0595, 0.0563],
    [0.086, 56, 0.086, 0.0854, 0.0813],
    [0.138, 32, 0.138, 0.1372, 0.1312],
    [0.164, 32, 0.164, 0.1631, 0.1571],
    [0.19, 24, 0.19, 0.189, 0.1818],
    [0.216, 28, 0.216, 0.215, 0.2085],
  ])('the formulas give the printed limits of %d-%d', (d, count, engagement, max, min) => {
    const limits = class2A(d, count, engagement);
    expect(limits.max).toBeCloseTo(max, 9);
    expect(limits.min).toBeCloseTo(min, 9);
  });

  test('the formulas give every unified row of the table', () => {
    const unified = THREADS.filter((thread) => thread.system === 'unified');
    expect(unified.length).toBeGreaterThanOrEqual(6);
    for (const { designation, count } of unified) {
      const limits = class2A(number(of(designation), 'nominal'), count);
      expect(number(of(designation), 'majorMax'), designation).toBeCloseTo(limits.max, 9);
      expect(number(of(designation), 'majorMin'), designation).toBeCloseTo(limits.min, 9);
    }
  });

  test.each([
    ['5/16-18', 0.3125, 0.3113, 0.3026, 0.0555556],
    ['5/16-24', 0.3125, 0.3114, 0.3042, 0.0416667],
    ['3/8-16', 0.375, 0.3737, 0.3643, 0.0625],
    ['3/8-24', 0.375, 0.3739, 0.3667, 0.0416667],
    ['7/16-14', 0.4375, 0.4361, 0.4258, 0.0714286],
    ['7/16-20', 0.4375, 0.4362, 0.4281, 0.05],
  ])(
    '%s: %d in, at most %d, at least %d, %d in a turn (ASME B1.1 by its formulas)',
    (name, d, max, min, turn) => {
      expectNear(number(of(name), 'nominal'), d);
      expectNear(number(of(name), 'majorMax'), max);
      expectNear(number(of(name), 'majorMin'), min);
      expect(number(of(name), 'advancePerTurn')).toBeCloseTo(turn, 7);
      expect(number(of(name), 'pitch')).toBe(number(of(name), 'advancePerTurn'));
      expect(partOf(run(of(name)).result, 'class')).toBe('2A');
    },
  );

  test('the nominal is not the greatest diameter, as one public chart prints it', () => {
    for (const { designation } of THREADS) {
      expect(number(of(designation), 'majorMax')).toBeLessThan(number(of(designation), 'nominal') - 0.0005);
    }
  });
});

describe('class 6g', () => {
  test.each([
    // A metric external thread chart, class 6g (ISO 965-2).
    ['M8×1.25', 7.972, 7.76],
    ['M8×1', 7.974, 7.794],
    ['M10×1.5', 9.968, 9.732],
    ['M10×1.25', 9.972, 9.76],
    ['M10×1', 9.974, 9.794],
  ])('%s: at most %d, at least %d mm', (name, max, min) => {
    expectNear(number(of(name), 'majorMax', 'metric'), max);
    expectNear(number(of(name), 'majorMin', 'metric'), min);
    expect(partOf(run(of(name)).result, 'class')).toBe('6g');
  });

  test('the tolerance of M8×1.25 is the table’s 212 µm, not the formula’s 206', () => {
    const width = number(of('M8x1.25'), 'majorMax', 'metric') - number(of('M8x1.25'), 'majorMin', 'metric');
    expect(width).toBeCloseTo(0.212, 9);
    expect(180 * 1.25 ** (2 / 3) - 3.15 / Math.sqrt(1.25)).toBeCloseTo(206, 0);
  });

  test.each([
    ['M8×1.25', 0.0492126],
    ['M10×1.5', 0.0590551],
    ['M10×1', 0.0393701],
  ])('a turn of %s is %d in', (name, turn) => {
    expect(number(of(name), 'advancePerTurn')).toBeCloseTo(turn, 7);
  });
});

describe('how people write it', () => {
  test.each([
    '7/16-20',
    '7/16-20 UNF',
    ' 7/16 - 20 unf ',
    '7/16-20UNF-2A',
    '7/16–20',
    '7/16"-20',
    '7/16 x 20',
    '7/16 20',
    '7/16 UNF',
    '7/16-20 TPI',
    '.4375-20',
    '0.4375 in - 20',
  ])('%j is 7/16-20', (text) => {
    expect(run(of(text)).result).toEqual(run(of('7/16-20')).result);
  });

  test.each([
    'M8x1.25',
    'M8×1.25',
    'm8 x 1.25',
    'M8 × 1,25',
    'M8-1.25',
    'M8*1.25',
    'M8x1.25-6g',
    'M8 x 1.25 mm',
    'm8 1.25',
  ])('%j is M8×1.25', (text) => {
    expect(run(of(text)).result).toEqual(run(of('M8×1.25')).result);
  });

  function detail(text: string): string {
    try {
      run(of(text));
    } catch (error) {
      if (error instanceof InputFaults) return error.faults.map((fault) => fault.detail).join();
    }
    throw new Error('was not refused');
  }

  test('a size alone is not guessed: its pitches are listed', () => {
    expect(faults(of('M8'))).toEqual(['/designation not-allowed']);
    expect(detail('M8')).toContain('M8×1.25, M8×1');
    expect(detail('7/16')).toContain('7/16-14 UNC, 7/16-20 UNF');
    expect(detail('7/16')).toContain('needs its pitch');
  });

  test.each([
    ['7/16-18', 'known of this size: 7/16-14 UNC, 7/16-20 UNF'],
    ['7/16-20 UNC', '7/16-20 UNF is not UNC'],
    ['7/16-20 UNF-3A', 'class 2A alone'],
    ['M8x1.25-6h', 'class 6g alone'],
    ['M8x1.3', 'known of this size: M8×1.25, M8×1'],
    ['M9x1.25', 'not in the table'],
    ['5/17-20', 'not in the table'],
    ['7/0-20', 'not in the table'],
    ['7/16-20 LH', 'must be a thread'],
    ['a stud', 'must be a thread'],
    ['7/16-20; drop', 'must be a thread'],
    ['-20', 'must be a thread'],
  ])('%j is refused: %s', (text, why) => {
    expect(faults(of(text))).toEqual(['/designation not-allowed']);
    expect(detail(text)).toContain(why);
  });

  test.each([[7], [null], [['7/16-20']], [{ value: 7 }], [Array(100_000).fill('M8')]])(
    'what is no text is refused',
    (bad) => {
      expect(faults({ designation: bad })).toEqual(['/designation not-allowed']);
    },
  );

  test('an empty text is a missing one', () => {
    expect(faults(of('  '))).toEqual(['/designation required']);
  });

  test('any text is answered or refused, and long ones soon', () => {
    const text = fc.oneof(
      fc.string({ maxLength: 300, unit: 'binary' }),
      fc.stringMatching(/^[M0-9/x.\- unfc]{0,80}$/),
      fc.constant('1'.repeat(100_000)),
      fc.constant('m'.repeat(50_000)),
    );
    fc.assert(
      fc.property(text, (designation) => {
        try {
          expect(partOf(run({ designation }).result, 'class')).toMatch(/^(2A|6g)$/);
        } catch (error) {
          if (!(error instanceof InputFaults)) throw error;
          expect(error.faults).toHaveLength(1);
        }
      }),
      { numRuns: 500 },
    );
  }, 20_000);

  test('every thread of the table is found by its own name, in any case', () => {
    for (const { designation } of THREADS) {
      expect(run(of(designation.toLowerCase())).result).toEqual(run(of(designation)).result);
    }
  });
});

describeContract(computation, { body: of('7/16-20') });
