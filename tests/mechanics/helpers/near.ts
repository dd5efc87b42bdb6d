import { expect } from 'vitest';
import { memberOf } from '../../../shared/member.ts';

/** Below this a double has lost its figures. */
const TINY = 1e-290;

/** Holds a number to another within a relative tolerance; zero is held to it absolutely, a million millionth of it. */
export function expectNear(actual: number, wanted: number, relative = 1e-9): void {
  const off = Math.abs(actual - wanted);
  const size = wanted === 0 ? 1e-12 : Math.max(Math.abs(wanted), TINY);
  expect(off, `${actual} against ${wanted}`).toBeLessThanOrEqual(relative * size);
}

/** Holds two JSON documents together: numbers within a relative tolerance, all else equal. */
export function expectSame(actual: unknown, wanted: unknown, relative = 1e-9, at = ''): void {
  if (typeof actual === 'number' && typeof wanted === 'number') {
    const off = Math.abs(actual - wanted);
    expect(off, `${at}: ${actual} against ${wanted}`).toBeLessThanOrEqual(
      wanted === 0 ? 1e-12 : relative * Math.max(Math.abs(wanted), TINY),
    );
  } else if (typeof actual === 'object' && actual !== null && typeof wanted === 'object' && wanted !== null) {
    expect(Object.keys(actual).sort(), `fields at ${at}`).toEqual(Object.keys(wanted).sort());
    for (const key of Object.keys(wanted)) {
      expectSame(memberOf(actual, key), memberOf(wanted, key), relative, `${at}/${key}`);
    }
  } else {
    expect(actual, at).toEqual(wanted);
  }
}
