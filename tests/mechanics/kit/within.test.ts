import { describe, expect, test } from 'vitest';
import { isAtLeast, isWithin } from '../../../server/mechanics/kit/within.ts';

const THOU = 0.0000254;

describe('a figure set against a band', () => {
  test('at the edge it is within, however its figures were rounded', () => {
    expect(0.1 + 0.2 > 0.3).toBe(true);
    expect(isWithin(0.1 + 0.2, 0.3)).toBe(true);
    expect(isWithin(-0.1 - 0.2, 0.3)).toBe(true);
    expect(isAtLeast(0.3, 0.1 + 0.2)).toBe(true);
    expect(isWithin(0.3 + 1e-9, 0.3)).toBe(true);
  });

  test('a ten-thousandth of an inch past it is not', () => {
    expect(isWithin(10.1 * THOU, 10 * THOU)).toBe(false);
    expect(isWithin(-10.1 * THOU, 10 * THOU)).toBe(false);
    expect(isAtLeast(9.9 * THOU, 10 * THOU)).toBe(false);
    expect(isAtLeast(-20 * THOU, 10 * THOU)).toBe(false);
  });

  test('nothing off is within any band', () => {
    expect(isWithin(0, 0)).toBe(true);
  });
});
