import { expect } from 'vitest';

/** Holds a number to another within a relative tolerance; nought is held to it absolutely. */
export function expectNear(actual: number, wanted: number, relative = 1e-9): void {
  const off = Math.abs(actual - wanted);
  expect(off, `${actual} against ${wanted}`).toBeLessThanOrEqual(
    relative * Math.max(Math.abs(wanted), 1e-12),
  );
}

/** Holds two JSON documents together: numbers within a relative tolerance, all else equal. */
export function expectSame(actual: unknown, wanted: unknown, relative = 1e-9, at = ''): void {
  if (typeof actual === 'number' && typeof wanted === 'number') {
    const off = Math.abs(actual - wanted);
    expect(off, `${at}: ${actual} against ${wanted}`).toBeLessThanOrEqual(
      Math.max(relative * Math.abs(wanted), 1e-12),
    );
  } else if (typeof actual === 'object' && actual !== null && typeof wanted === 'object' && wanted !== null) {
    expect(Object.keys(actual).sort(), `fields at ${at}`).toEqual(Object.keys(wanted).sort());
    for (const key of Object.keys(wanted)) {
      expectSame(Reflect.get(actual, key), Reflect.get(wanted, key), relative, `${at}/${key}`);
    }
  } else {
    expect(actual, at).toEqual(wanted);
  }
}
