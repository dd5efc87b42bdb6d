import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/pushrod-length.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { deg, inches, mm } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

const { run, number, faults, refused } = runner(computation);
const checker = { checkerAtZero: inches(7.8), pitch: inches(0.05), turns: 1 };
const length = (body: object) => number(body, 'length');
const stocked = (...values: number[]) => ({ ...checker, stock: { values, unit: 'in' } });
const cautions = (body: object) => run(body).cautions.join(' ');

describe('the length', () => {
  test('printed example: a checker marked 7.800, screwed apart one turn of .050, is 7.850 (a cam maker’s answers)', () => {
    expectNear(length(checker), 7.85);
  });

  test('the thread by its designation, its pitch, or threads to the inch: 20 of them are .050 a turn', () => {
    const { pitch: _, ...rest } = checker;
    for (const by of [{ thread: '1/4-20' }, { pitch: '20 tpi' }, { pitch: mm(1.27) }]) {
      expectNear(length({ ...rest, ...by }), 7.85);
    }
    expect(faults(rest)).toEqual(['/thread required']);
    expect(faults({ ...checker, thread: '1/4-20' })).toEqual(['/pitch not-allowed']);
    expect(faults({ ...checker, pitch: deg(3) })).toEqual(['/pitch wrong-dimension']);
  });

  test('preload is added, lash taken off', () => {
    expectNear(length({ ...checker, add: inches(0.03) }), 7.88);
    expectNear(length({ ...checker, less: inches(0.01) }), 7.84);
    expectNear(length({ ...checker, add: inches(0.03), less: inches(0.01) }), 7.87);
    expect(cautions({ ...checker, add: inches(0.03), less: inches(0.01) })).toContain('are both meant?');
    expect(cautions({ ...checker, add: inches(0.03), less: inches(0) })).not.toContain('are both meant?');
  });

  test('a lash at the valve is the ratio times the one at the pushrod: .018 at 1.6 takes .01125 off, by hand', () => {
    expectNear(length({ ...checker, lash: inches(0.018), ratio: 1.6 }), 7.83875);
    expect(cautions({ ...checker, add: inches(0.03), lash: inches(0.01), ratio: 1.5 })).toContain(
      'both meant?',
    );
    expect(faults({ ...checker, lash: inches(0.018) })).toEqual(['/ratio required']);
    expect(faults({ ...checker, ratio: 1.6 })).toEqual(['/lash required']);
    expect(faults({ ...checker, lash: inches(0.018), ratio: 1.6, less: inches(0.01) })).toEqual([
      '/lash not-allowed',
    ]);
  });

  test('turned in past its zero it is shorter, and that is asked about', () => {
    expectNear(length({ ...checker, turns: -0.5 }), 7.775);
    expect(cautions({ ...checker, turns: -0.5 })).toContain('past its zero');
    expect(cautions({ ...checker, turns: 0 })).not.toContain('past its zero');
  });
});

describe('overall and effective', () => {
  test('.017 in less where it is told as effective, the same where overall', () => {
    expectNear(length({ ...checker, convention: 'effective' }), 7.833);
    expectNear(length({ ...checker, convention: 'overall' }), 7.85);
    expect(faults({ ...checker, convention: 'gauge' })).toEqual(['/convention not-allowed']);
  });

  test('the ball itself drawn: 5/16 with .100 oil holes, a .140 gauge at each end', () => {
    // Where a circle of so much across sits on a ball: √(R² − (d/2)²) from its centre, at both ends.
    const at = (across: number) => Math.sqrt((5 / 32) ** 2 - (across / 2) ** 2);
    const drawn = 2 * (at(0.1) - at(0.14));
    const told = length(checker) - length({ ...checker, convention: 'effective' });
    expect(Math.abs(told - drawn)).toBeLessThan(0.0005);
  });

  test('what is not said is asked, what is said is warned of being counted twice', () => {
    expect(cautions(checker)).toContain('about .017 in apart');
    expect(cautions({ ...checker, convention: 'effective' })).toContain('counted twice');
  });
});

describe('the nearest in stock', () => {
  test('with how much longer it is than wanted', () => {
    expectNear(number(stocked(7.9, 7.875, 7.8), 'nearest.length'), 7.875);
    expect(number(stocked(7.9, 7.875, 7.8), 'nearest.difference')).toBeCloseTo(0.025, 12);
    expect(number(stocked(7.8), 'nearest.difference')).toBeCloseTo(-0.05, 12);
    expect(number({ ...stocked(7.84), convention: 'effective' }, 'nearest.difference')).toBeCloseTo(
      0.007,
      12,
    );
  });

  test('of two equally near the shorter, whichever stands first', () => {
    expectNear(number(stocked(7.875, 7.825), 'nearest.length'), 7.825);
    expectNear(number(stocked(7.825, 7.875), 'nearest.length'), 7.825);
  });

  test('nothing in stock, or no stock: none is named', () => {
    expect(run(stocked()).result).not.toHaveProperty('nearest');
    expect(cautions(stocked())).toContain('Nothing is in stock');
    expect(run(checker).result).not.toHaveProperty('nearest');
    expect(cautions(checker)).not.toContain('in stock');
  });

  test('what its difference does to preload and gap', () => {
    const add = { add: inches(0.03) };
    expect(cautions({ ...stocked(7.875), ...add })).toContain('the preload becomes .025 in');
    expect(cautions({ ...stocked(7.85), ...add })).toContain('no preload is left');
    const less = { less: inches(0.01) };
    expect(cautions({ ...stocked(7.845), ...less })).toContain('the gap at the pushrod becomes .005 in');
    expect(cautions({ ...stocked(7.85), ...less })).toContain('held off its seat');
    expect(cautions(stocked(7.845))).toContain('.005 in shorter than wanted');
    expect(cautions(stocked(7.85))).not.toContain('than wanted');
  });

  test('a difference like the conventions’, or like a turn, is asked about', () => {
    expect(cautions(stocked(7.867))).toContain('told the same way?');
    expect(cautions(stocked(7.861))).not.toContain('told the same way?');
    expect(cautions(stocked(7.9))).toContain('about one turn of the checker');
    expect(cautions(stocked(7.751))).toContain('about 2 turns of the checker');
    expect(cautions(stocked(7.875))).not.toContain('of the checker:');
    // A pitch no checker has: every difference would be some count of its turns.
    expect(cautions({ ...stocked(7.875), pitch: inches(0.004) })).not.toContain('of the checker:');
  });
});

describe('input that can’t be', () => {
  test('no length left, or beyond any machine part', () => {
    const two = ['/checkerAtZero impossible-input', '/turns impossible-input'];
    expect(faults({ ...checker, turns: -156 })).toEqual(two);
    expect(faults({ ...checker, turns: -157 })).toEqual(two);
    expect(faults({ ...checker, less: inches(8) })).toEqual([two[0], '/less impossible-input', two[1]]);
    expect(faults({ ...checker, checkerAtZero: inches(0.01), turns: 0, convention: 'effective' })).toEqual(
      two,
    );
    expect(faults({ ...checker, pitch: inches(99) })).toEqual(two);
    expect(refused({ ...checker, checkerAtZero: inches(100), turns: 0 })).toEqual([]);
  });

  test('negative allowances and stock', () => {
    expect(faults({ ...stocked(7.8, 0, -1), add: inches(-0.01), less: inches(-0.01) })).toEqual([
      '/add out-of-range',
      '/less out-of-range',
      '/stock/values/1 out-of-range',
      '/stock/values/2 out-of-range',
    ]);
  });

  test('under fire', () => {
    expectSoundUnderFire(computation, { ...stocked(7.8, 7.9), add: inches(0.03), less: inches(0.01) });
  }, 30_000);
});

test('the checker turned back by the turns, with preload off and lash on, is the checker', () => {
  const small = fc.double({ min: 0, max: 0.2, noNaN: true });
  fc.assert(
    fc.property(
      fc.double({ min: 4, max: 12, noNaN: true }),
      fc.double({ min: 0.02, max: 0.06, noNaN: true }),
      fc.double({ min: -3, max: 15, noNaN: true }),
      small,
      small,
      (zero, pitch, turns, add, less) => {
        const out = {
          checkerAtZero: inches(zero),
          pitch: inches(pitch),
          turns,
          add: inches(add),
          less: inches(less),
        };
        const wanted = length(out);
        const back = {
          ...out,
          checkerAtZero: inches(wanted),
          turns: -turns,
          add: inches(less),
          less: inches(add),
        };
        expect(length(back)).toBeCloseTo(zero, 11);
        const metric = {
          ...out,
          checkerAtZero: mm(zero * 25.4),
          pitch: mm(pitch * 25.4),
          stock: [inches(wanted)],
        };
        expect(Math.abs(number(metric, 'nearest.difference'))).toBeLessThan(1e-12);
      },
    ),
  );
});

describeContract(computation, {
  body: { checkerAtZero: inches(7.8), thread: '1/4-20', turns: 1 },
  quantities: { checkerAtZero: 'in' },
  numbers: ['turns'],
});
