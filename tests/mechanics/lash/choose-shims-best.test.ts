import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chooseShims, type ShimWanted } from '../../../server/mechanics/lash/choose-shims.ts';

const MM = 0.001;
const WITHIN = 0.02;

interface Valve {
  readonly fitted: number;
  readonly found: number;
}
const WANTED = 0.2;
const inMetres = ({ fitted, found }: Valve): ShimWanted => ({
  fitted: fitted * MM,
  found: found * MM,
  wanted: WANTED * MM,
});
const choose = (valves: readonly Valve[], stock: readonly number[] = []) =>
  chooseShims(
    valves.map(inMetres),
    stock.map((each) => each * MM),
    WITHIN * MM,
  );

/** How many go without, how many are further off than what is left alone, and how far those are off beyond it. */
type Cost = readonly [without: number, misses: number, off: number];

const less = (a: Cost, b: Cost) => (a[0] - b[0] || a[1] - b[1] || a[2] - b[2]) < 0;

/** How far a lash is off beyond what is left alone; rounding of hundredths is nothing. */
const beyond = (lash: number) => Math.max(0, Math.round((Math.abs(lash - WANTED) - WITHIN) * 1e6) / 1e6);

/** The least of every way there is: the second route. */
function best(valves: readonly Valve[], pool: readonly number[]): Cost {
  const [valve, ...rest] = valves;
  if (valve === undefined) return [0, 0, 0];
  const [without, misses, off] = best(rest, pool);
  let found: Cost = [without + 1, misses, off];
  pool.forEach((shim, index) => {
    const lash = valve.fitted + valve.found - shim;
    if (lash <= 1e-6) return;
    const others = best(
      rest,
      pool.filter((_, at) => at !== index),
    );
    const own = beyond(lash);
    const cost: Cost = [others[0], others[1] + (own > 0 ? 1 : 0), others[2] + own];
    if (less(cost, found)) found = cost;
  });
  return found;
}

test('no way of all there are leaves fewer without, then fewer that miss, then the lashes nearer', () => {
  // Hundredths of a millimetre: no two ways are nearly as good by rounding alone.
  const shim = fc.integer({ min: 240, max: 290 }).map((each) => each / 100);
  const valve = fc.record({ fitted: shim, found: fc.integer({ min: 0, max: 60 }).map((each) => each / 100) });
  fc.assert(
    fc.property(
      fc.array(valve, { minLength: 1, maxLength: 3 }),
      fc.array(shim, { maxLength: 2 }),
      (valves, stock) => {
        const chosen = choose(valves, stock);
        const [without, misses, off] = best(valves, [...valves.map(({ fitted }) => fitted), ...stock]);
        expect(chosen.filter((each) => each === undefined)).toHaveLength(without);
        const left = chosen.flatMap((each) => (each === undefined ? [] : [beyond(each.lash / MM)]));
        expect(left.filter((each) => each > 0)).toHaveLength(misses);
        // What is not told apart: a thousandth of each gap, and what the work counts.
        const sum = left.reduce((all, each) => all + each, 0);
        expect(sum).toBeLessThanOrEqual(off + 0.004 * left.length);
        chosen.forEach((each, index) => {
          const { fitted = 0, found = 0 } = valves[index] ?? {};
          if (each !== undefined) expect(each.lash / MM).toBeCloseTo(fitted + found - each.shim / MM, 9);
        });
      },
    ),
    { numRuns: 150 },
  );
});

describe('of ways as good: what stays goes before what moves, and that before what comes out of stock', () => {
  const from = (valves: readonly Valve[], stock: readonly number[] = []) =>
    choose(valves, stock).map((each) => each?.from);
  test.each([
    ['its own, though one like it is in stock', [{ fitted: 2.6, found: 0.2 }], [2.6], ['own']],
    [
      'its own, though another’s is alike',
      [
        { fitted: 2.6, found: 0.2 },
        { fitted: 2.6, found: 0.2 },
      ],
      [],
      ['own', 'own'],
    ],
    [
      'one that moves, though one like it is in stock',
      [
        { fitted: 2.7, found: 0.1 },
        { fitted: 2.6, found: 0.3 },
      ],
      [2.6, 2.7],
      [1, 0],
    ],
    [
      'one out of stock, where else four valves would change theirs round',
      [
        { fitted: 2.7, found: 0.1 },
        { fitted: 2.6, found: 0.22 },
        { fitted: 2.64, found: 0.22 },
        { fitted: 2.68, found: 0.21 },
      ],
      [2.6],
      ['stock', 'own', 'own', 'own'],
    ],
    ['one out of stock, if it is better', [{ fitted: 2.7, found: 0.1 }], [2.6, 2.65], ['stock']],
    ['none where each takes up the gap', [{ fitted: 2.7, found: 0 }], [2.75], [undefined]],
  ] as const)('%s', (_what, valves, stock, wanted) => {
    expect(from(valves, stock)).toEqual(wanted);
  });

  test('a gap of none that is wanted may be met, and is told as none', () => {
    const [chosen] = chooseShims([{ fitted: 0.0027, found: 0, wanted: 0 }], [], 0);
    expect(chosen).toEqual({ shim: 0.0027, lash: 0, from: 'own' });
  });
});
