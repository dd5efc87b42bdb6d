import { describe, expect, test } from 'vitest';
import limits from '../../../seeds/limits.json' with { type: 'json' };
import { everyFault } from '../../../server/mechanics/kit/every-fault.ts';
import { defaultLimit, isLimitName, limitSource } from '../../../server/mechanics/kit/limits.ts';
import { nearestOf } from '../../../server/mechanics/kit/nearest.ts';
import { saidLength } from '../../../server/mechanics/kit/said.ts';
import {
  bareLength,
  bareLoad,
  inches,
  loadSaid,
  lowOrHigh,
} from '../../../server/mechanics/kit/say-inches.ts';
import { judged } from '../../../server/mechanics/kit/verdict.ts';
import { InputFaults, impossible } from '../../../shared/problems/faults.ts';
import { speaking } from '../../../shared/quantities/spoken-units.ts';
import { expectNear } from '../helpers/near.ts';

const INCH = 0.0254;
/** A pound of force: .45359237 kg by 9.80665 m/s² (both exact by definition). */
const POUND = 0.45359237 * 9.80665;

describe('lengths in sentences', () => {
  test('to as many places as asked', () => {
    expect(bareLength(0.48256 * INCH, 4)).toBe('.4826');
    expect(bareLength(0.48256 * INCH, 3)).toBe('.483');
    expect(bareLength(0.48256 * INCH, 1)).toBe('.5');
  });

  test('the last bits of a product do not round half a place down', () => {
    // .0025 in in metres and back is .00249999… in a double.
    expect(bareLength(0.0025 * INCH, 3)).toBe('.003');
    expect(inches(1.0025 * INCH)).toBe('1.003 in');
  });

  test('a difference is low or high; of none it is not said that it is low', () => {
    expect(lowOrHigh(-0.018 * INCH)).toBe('.018 in low');
    expect(lowOrHigh(0.018 * INCH)).toBe('.018 in high');
    expect(lowOrHigh(0)).toMatch(/high$/);
  });

  test('a fourth place is said where it is not zero', () => {
    expect(saidLength(0.0667 * INCH)).toBe('.0667 in');
    expect(saidLength(0.017 * INCH)).toBe('.017 in');
    expect(saidLength(0.25 * INCH)).toBe('.250 in');
  });
});

test('a load is told to 5 lb, or 20 N: 312 lb is 310, and 1387.8 N', () => {
  expect(bareLoad(312 * POUND)).toBe('310');
  expect(loadSaid(313 * POUND)).toBe('315 lb');
  expect(speaking('metric', () => loadSaid(312 * POUND))).toBe('1380 N');
});

describe('limits of the table', () => {
  test('each has its length and its source', () => {
    expect(limitSource('coil-bind')).toBe(limits.limits['coil-bind'].source);
    for (const name of Object.keys(limits.limits).filter(isLimitName)) {
      expectNear(defaultLimit(name), limits.limits[name].value * INCH);
      expect(limitSource(name).length, name).toBeGreaterThan(10);
    }
    expect(isLimitName('no-such-limit')).toBe(false);
    expect(isLimitName('toString')).toBe(false);
  });
});

describe('several things wrong at once', () => {
  test('all are told; none is told where nothing is wrong', () => {
    const told = () =>
      everyFault(
        () => impossible(['one'], 'is wrong'),
        () => undefined,
        () => impossible(['two', 'three'], 'are wrong'),
      );
    expect(told).toThrow(
      expect.objectContaining({
        faults: ['/one', '/two', '/three'].map((pointer) => expect.objectContaining({ pointer })),
      }),
    );
    expect(() => everyFault(() => undefined)).not.toThrow();
  });

  test('what is no fault of the input goes on as it is', () => {
    const broken = new TypeError('a fault of the program');
    const check = () => {
      throw broken;
    };
    expect(() => everyFault(() => impossible(['one'], 'is wrong'), check)).toThrow(broken);
  });

  test('of a long list the first hundred are told', () => {
    const fields = Array.from({ length: 150 }, (_, at) => `field${at}`);
    try {
      everyFault(() => impossible(fields, 'is wrong'));
      expect.unreachable();
    } catch (error) {
      if (!(error instanceof InputFaults)) throw error;
      expect(error.faults).toHaveLength(100);
      expect(error.faults.at(-1)?.pointer).toBe('/field99');
    }
  });
});

test('nearest in stock: of two equally near the smaller, whichever comes first', () => {
  expect(nearestOf([0.003, 0.001], 0.002)).toBe(0.001);
  expect(nearestOf([0.001, 0.003], 0.002)).toBe(0.001);
  expect(nearestOf([0.001, 0.003], 0.0021)).toBe(0.003);
  expect(nearestOf([], 0.002)).toBeUndefined();
});

describe('a gap against a limit (JCGM 106:2012, 8.2, from memory)', () => {
  const verdict = (gap: number, uncertainty?: number) =>
    judged(gap, { limit: 0.002, uncertainty }, 0.01).verdict;

  test('met with all of its interval, missed with all of it, or close', () => {
    expect(verdict(0.002)).toBe('clear');
    expect(verdict(0.00199)).toBe('short');
    expect(verdict(0.0025, 0.0005)).toBe('clear');
    expect(verdict(0.0024, 0.0005)).toBe('close');
    expect(verdict(0.0016, 0.0005)).toBe('close');
    expect(verdict(0.0014, 0.0005)).toBe('short');
  });

  test('the limit that was sent goes before the table’s', () => {
    expect(judged(0.005, {}, 0.01)).toMatchObject({ limit: 0.01, verdict: 'short' });
    expect(judged(0.005, { limit: 0.002 }, 0.01)).toMatchObject({
      margin: 0.005,
      limit: 0.002,
      verdict: 'clear',
    });
  });
});
