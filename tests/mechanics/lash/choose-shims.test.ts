import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chooseShims, type ShimWanted } from '../../../server/mechanics/lash/choose-shims.ts';

const MM = 0.001;
const WITHIN = 0.02 * MM;
const valve = (fitted: number, found: number, wanted = 0.2): ShimWanted => ({
  fitted: fitted * MM,
  found: found * MM,
  wanted: wanted * MM,
});
const choose = (valves: readonly ShimWanted[], stock: readonly number[] = []) =>
  chooseShims(
    valves,
    stock.map((each) => each * MM),
    WITHIN,
  ).map((choice) =>
    choice === undefined
      ? undefined
      : { shim: Math.round((choice.shim / MM) * 1000) / 1000, from: choice.from },
  );

describe('shims out of those that are there, by hand', () => {
  test('two valves whose shims are right for each other change places', () => {
    // 2.70 + .10 − .20 = 2.60 and 2.60 + .30 − .20 = 2.70.
    expect(choose([valve(2.7, 0.1), valve(2.6, 0.3)])).toEqual([
      { shim: 2.6, from: 1 },
      { shim: 2.7, from: 0 },
    ]);
  });

  test('too little lash takes a thinner shim, too much a thicker one', () => {
    expect(choose([valve(2.7, 0.1)], [2.6, 2.8])).toEqual([{ shim: 2.6, from: 'stock' }]);
    expect(choose([valve(2.7, 0.3)], [2.6, 2.8])).toEqual([{ shim: 2.8, from: 'stock' }]);
  });

  test('a lash that is near enough is left, though a nearer shim is in stock', () => {
    expect(choose([valve(2.7, 0.21)], [2.71])).toEqual([{ shim: 2.7, from: 'own' }]);
  });

  test('one shim in stock goes in once: the other valve keeps what is nearest of its own', () => {
    expect(choose([valve(2.7, 0.1), valve(2.7, 0.1)], [2.6])).toHaveLength(2);
    const taken = choose([valve(2.7, 0.1), valve(2.7, 0.1)], [2.6]).filter((each) => each?.from === 'stock');
    expect(taken).toHaveLength(1);
    expect(choose([valve(2.7, 0.1), valve(2.7, 0.1)], [2.6, 2.6]).map((each) => each?.shim)).toEqual([
      2.6, 2.6,
    ]);
  });

  test('the one shim that is right for a valve is not spent on another that stays wrong with it', () => {
    // 2.35 + .05 − .20 = 2.20 exactly; the first wants 2.15, and .05 too little is no answer for it.
    const [first, second] = choose([valve(2.3, 0.05), valve(2.35, 0.05)], [2.2, 2.25]);
    expect(second).toEqual({ shim: 2.2, from: 'stock' });
    expect(first?.shim).not.toBe(2.2);
  });

  test('a shim that takes up all of the gap is none', () => {
    expect(choose([valve(2.7, 0)], [2.75])).toEqual([undefined]);
    expect(choose([valve(2.7, 0)], [2.75, 2.4])).toEqual([{ shim: 2.4, from: 'stock' }]);
  });
});

/** Every way of giving each row a column of its own: the method that needs no proof. */
function everyWay(rows: number, columns: number): number[][] {
  if (rows === 0) return [[]];
  return everyWay(rows - 1, columns).flatMap((taken) =>
    Array.from({ length: columns }, (_, column) => column)
      .filter((column) => !taken.includes(column))
      .map((column) => [...taken, column]),
  );
}

test('no other way of giving out the shims leaves the lashes nearer together: by trying all', () => {
  const shim = fc.integer({ min: 240, max: 300 }).map((hundredths) => hundredths / 100);
  const gap = fc.integer({ min: 5, max: 40 }).map((hundredths) => hundredths / 100);
  fc.assert(
    fc.property(
      fc.array(fc.tuple(shim, gap), { minLength: 1, maxLength: 3 }),
      fc.array(shim, { maxLength: 3 }),
      (fitted, stock) => {
        const valves = fitted.map(([own, found]) => valve(own, found));
        const pool = [...fitted.map(([own]) => own), ...stock];
        const off = (index: number, thickness: number) => {
          const [own = 0, found = 0] = fitted[index] ?? [];
          const lash = own + found - thickness;
          const over = Math.abs(lash - 0.2) - 0.02;
          // As many as can be are near enough first: a miss weighs more than all gaps together.
          return lash < 1e-6 ? 1000 : over > 1e-6 ? 100 + over : 0;
        };
        const best = Math.min(
          ...everyWay(valves.length, pool.length).map((way) =>
            way.reduce((sum, column, index) => sum + off(index, pool[column] ?? 0), 0),
          ),
        );
        const chosen = choose(valves, stock);
        const got = chosen.reduce(
          (sum, each, index) => sum + (each === undefined ? 1000 : off(index, each.shim)),
          0,
        );
        // What the work counts weighs less than a hundredth of a millimetre for each.
        expect(got).toBeLessThanOrEqual(best + 0.01 * valves.length);
        const used = chosen.flatMap((each) => (each === undefined ? [] : [each.shim]));
        for (const thickness of used)
          expect(used.filter((each) => each === thickness).length).toBeLessThanOrEqual(
            pool.filter((each) => each === thickness).length,
          );
      },
    ),
  );
});
