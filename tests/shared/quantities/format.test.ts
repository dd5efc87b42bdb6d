import { describe, expect, test } from 'vitest';
import {
  formatInterval,
  formatNumber,
  formatQuantity,
  formatRatio,
  formatRatioInterval,
} from '../../../shared/quantities/format.ts';

describe('lengths', () => {
  // No zero before an inch decimal, one before a millimetre decimal: ASME Y14.5-2009 1.6 (from memory).
  test.each([
    [{ value: 0.482, unit: 'in' as const }, {}, '.482 in'],
    [{ value: 0.5, unit: 'in' as const }, {}, '.500 in'],
    [{ value: 0.4355, unit: 'in' as const }, {}, '.4355 in'],
    [{ value: 0.58123456, unit: 'in' as const }, { derived: true }, '.5812 in'],
    [{ value: 0.1 + 0.2, unit: 'in' as const }, {}, '.300 in'],
    // What is left of a difference of two equal figures is none.
    [{ value: 0.3 - 0.1 - 0.2, unit: 'in' as const }, {}, '.000 in'],
    [{ value: 14.15 - 14.1 - 0.05, unit: 'mm' as const }, {}, '0.00 mm'],
    [{ value: -0.003, unit: 'in' as const }, {}, '\u2212.003 in'],
    [{ value: -0.00001, unit: 'in' as const }, { derived: true }, '.0000 in'],
    [{ value: 12.24, unit: 'mm' as const }, {}, '12.24 mm'],
    [{ value: 0.5, unit: 'mm' as const }, {}, '0.50 mm'],
    [{ value: 0.4355, unit: 'in' as const }, { places: 3 }, '.436 in'],
    [{ value: 1.005, unit: 'in' as const }, { places: 2 }, '1.01 in'],
    [{ value: 184.6, unit: 'lbf' as const }, { derived: true }, '185 lbf'],
  ])('%j %j', (quantity, options, shown) => {
    expect(formatQuantity(quantity, options)).toBe(shown);
  });
});

describe('uncertainty', () => {
  test('the worked examples of the guide to uncertainty', () => {
    // JCGM 100:2008, 7.2.4 (mass standard), H.1.7 (end gauge), 7.2.6 (rounding to the uncertainty).
    expect(formatInterval(100.02147, 0.00079, 'g')).toBe('100.02147 ± 0.00079 g');
    expect(formatInterval(50.000838, 0.000093, 'mm')).toBe('50.000838 ± 0.000093 mm');
    expect(formatQuantity({ value: 10.05762, unit: 'N' }, { uncertainty: 0.027 })).toBe('10.058 N');
  });

  test.each([
    [1.747, 0.006, '1.747 ± .006'],
    [1.74712, 0.00603, '1.747 ± .006'],
    [1.74712, 0.0163, '1.747 ± .016'],
    [1.74712, 0.00996, '1.75 ± .01'],
    [1234.5, 256, '1230 ± 260'],
    [1.65, 0, '1.65 ± 0'],
  ])('%d ± %d', (value, halfWidth, shown) => {
    expect(formatInterval(value, halfWidth)).toBe(shown);
  });
});

test.each([
  [1.53714, 0.0104, '1.537 ± .010'],
  [1.6, 0.0099, '1.600 ± .010'],
  [1.74712, 0.00603, '1.747 ± .006'],
  [1.74712, 0.00043, '1.74712 ± .00043'],
  [1.62, 0.27, '1.62 ± .27'],
])('a ratio of %d ± %d has the three places of the trade where they carry it', (ratio, halfWidth, shown) => {
  expect(formatRatioInterval(ratio, halfWidth)).toBe(shown);
});

test('plain numbers', () => {
  expect(formatNumber(0.35, 2)).toBe('.35');
  expect(formatNumber(-0.35, 2)).toBe('\u2212.35');
  expect(formatNumber(-0.001, 2)).toBe('.00');
  expect(formatRatio(1.74712)).toBe('1.747');
});

test.each([Number.NaN, Number.POSITIVE_INFINITY])('%d is never shown', (value) => {
  expect(() => formatNumber(value, 3)).toThrow(RangeError);
  expect(() => formatQuantity({ value, unit: 'in' })).toThrow(RangeError);
  expect(() => formatInterval(1, value)).toThrow(RangeError);
});
