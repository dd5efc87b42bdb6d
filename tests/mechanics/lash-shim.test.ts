import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/lash-shim.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { inches, mm } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

const { run, number, faults, refused } = runner(computation);
const fitted = { shimFitted: mm(2.7), lashFound: mm(0.25), lashWanted: mm(0.2) };
const stocked = (...values: number[]) => ({ ...fitted, stock: { values, unit: 'mm' } });

describe('the sum of a workshop manual', () => {
  // From memory, common practice: new shim = old shim + (gap measured − gap specified); .25 for .20 on 2.70 is 2.75.
  test('2.70 mm with .25 found and .20 wanted is 2.75 mm', () => {
    expectNear(number(fitted, 'shim', 'metric'), 2.75);
  });

  test('too tight: a thinner one; right already: the same one', () => {
    expectNear(number({ ...fitted, lashFound: mm(0.1) }, 'shim', 'metric'), 2.6);
    expectNear(number({ ...fitted, lashFound: mm(0.2) }, 'shim', 'metric'), 2.7);
  });

  test('with no shim in, what is measured less what is wanted', () => {
    expectNear(number({ ...fitted, shimFitted: mm(0), lashFound: mm(2.95) }, 'shim', 'metric'), 2.75);
  });

  test('a gap of nothing is cautioned: the valve may be held open', () => {
    const none = { ...fitted, lashFound: mm(0) };
    expectNear(number(none, 'shim', 'metric'), 2.5);
    expect(run(none).cautions.join()).toContain('held off its seat');
    expect(run(fitted).cautions.join()).not.toContain('held off its seat');
  });
});

describe('the nearest in stock', () => {
  test('the one least away, with the gap that it gives', () => {
    expectNear(number(stocked(2.6, 2.78, 2.7), 'nearest.shim', 'metric'), 2.78);
    expectNear(number(stocked(2.6, 2.78, 2.7), 'nearest.lash', 'metric'), 0.17);
    expect(run(stocked(2.78)).cautions.join()).toContain('less gap than wanted');
    expect(run(stocked(2.7)).cautions.join()).toContain('more gap than wanted');
    expect(run(stocked(2.75)).cautions.join()).not.toContain('gap than wanted');
  });

  test('of two equally near the thinner, whichever stands first', () => {
    expectNear(number(stocked(2.8, 2.7), 'nearest.shim', 'metric'), 2.7);
    expectNear(number(stocked(2.7, 2.8), 'nearest.shim', 'metric'), 2.7);
  });

  test('one that leaves no gap is not named, however near', () => {
    // 2.95 mm takes up all of the gap; 2.60 is further away and leaves .35.
    expectNear(number({ ...stocked(2.95, 2.6), lashWanted: mm(0.1) }, 'nearest.shim', 'metric'), 2.6);
    const none = run(stocked(2.95, 3));
    expect(none.result).not.toHaveProperty('nearest');
    expect(none.cautions.join()).toContain('No shim in stock leaves a gap');
  });

  test('a gap of nothing that is wanted may be met', () => {
    const close = { ...stocked(2.95), lashWanted: mm(0) };
    expect(number(close, 'nearest.lash')).toBe(0);
  });

  test('nothing in stock, or no stock: none is named', () => {
    expect(run(stocked()).result).not.toHaveProperty('nearest');
    expect(run(stocked()).cautions.join()).toContain('Nothing is in stock');
    expect(run(fitted).result).not.toHaveProperty('nearest');
    expect(run(fitted).cautions.join()).not.toContain('in stock');
  });
});

test('a shim without thickness can’t be', () => {
  const all = ['/lashFound impossible-input', '/lashWanted impossible-input', '/shimFitted impossible-input'];
  expect(faults({ shimFitted: mm(0.1), lashFound: mm(0.1), lashWanted: mm(0.2) })).toEqual(all);
  expect(faults({ shimFitted: mm(0.1), lashFound: mm(0.1), lashWanted: mm(0.3) })).toEqual(all);
  expect(faults({ ...fitted, stock: [mm(2.7), mm(0), inches(-1)] })).toEqual([
    '/stock/1 out-of-range',
    '/stock/2 out-of-range',
  ]);
  expect(refused({ ...fitted, stock: 'all' })).toEqual(['/stock not-allowed']);
});

const thicknesses = fc.double({ min: 1.2, max: 4, noNaN: true });
/** From .0015 in on, which is the least lash that anybody asks for. */
const gaps = fc.double({ min: 0.04, max: 0.6, noNaN: true });

test('fitting the shim that comes out gives the gap that was wanted', () => {
  fc.assert(
    fc.property(thicknesses, gaps, gaps, (shimFitted, lashFound, lashWanted) => {
      const first = { shimFitted: mm(shimFitted), lashFound: mm(lashFound), lashWanted: mm(lashWanted) };
      const shim = number(first, 'shim', 'metric');
      // The bucket stays where it is: shim and gap fill the same room before and after.
      expectNear(shim + lashWanted, shimFitted + lashFound, 1e-12);
      const again = number({ ...first, shimFitted: mm(shim), lashFound: mm(lashWanted) }, 'shim', 'metric');
      expectNear(again, shim, 1e-12);
    }),
  );
});

test('none of a stock is nearer than the nearest, and its gap is what is left', () => {
  fc.assert(
    fc.property(
      fc.array(thicknesses, { minLength: 1, maxLength: 30 }),
      gaps,
      gaps,
      (stock, found, wanted) => {
        const body = { ...stocked(...stock), lashFound: mm(found), lashWanted: mm(wanted) };
        const room = 2.7 + found;
        const fit = stock.filter((each) => each < room - 1e-6);
        fc.pre(stock.every((each) => Math.abs(room - each) > 1e-6));
        if (fit.length === 0) {
          expect(run(body).result).not.toHaveProperty('nearest');
          return;
        }
        const shim = number(body, 'nearest.shim', 'metric');
        const away = (each: number) => Math.abs(each - (room - wanted));
        for (const each of fit) expect(away(shim)).toBeLessThanOrEqual(away(each) + 1e-7);
        expectNear(number(body, 'nearest.lash', 'metric'), room - shim, 1e-6);
      },
    ),
  );
});

test('under fire', () => {
  expectSoundUnderFire(computation, stocked(2.6, 2.8));
}, 30_000);

describeContract(computation, {
  body: fitted,
  quantities: { shimFitted: 'in', lashFound: 'mm', lashWanted: 'thou' },
});
