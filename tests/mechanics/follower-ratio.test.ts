import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/follower-ratio.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { inches, mm } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { describeSaid } from './helpers/said.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

const { run, number, faults } = runner(computation);
const arm = (value: number, errorLimit = 0.3) => ({ value: mm(value), errorLimit: mm(errorLimit) });
const place = (toValve: number, toCam: number, errorLimit = 0.3) => ({
  toValve: arm(toValve, errorLimit),
  toCam: arm(toCam, errorLimit),
});

describe('by hand', () => {
  test('36 over 24 is 1.5; ±.3 on each is ±.02254 by quadrature: .3/24·√(1 + 2.25)', () => {
    const body = { shut: place(36, 24) };
    expectNear(number(body, 'shut.ratio'), 1.5);
    expect(number(body, 'shut.standardUncertainty') * Math.sqrt(3)).toBeCloseTo(0.02254, 4);
    expect(run(body).result).not.toHaveProperty('overall');
  });

  test('with both ends known the overall ratio lies between them, whichever is the greater', () => {
    const rising = { shut: place(36, 24, 0), open: place(36, 22, 0) };
    expectNear(number(rising, 'overall.0'), 1.5);
    expectNear(number(rising, 'overall.1'), 36 / 22);
    const falling = { shut: rising.open, open: rising.shut };
    expectNear(number(falling, 'overall.0'), 1.5);
    expectNear(number(falling, 'overall.1'), 36 / 22);
  });
});

/*
 * An independent method: a finger with a roller is driven by geometry alone. Pivot at the origin, a roller of radius ρ
 * whose centre is a from the pivot; the cam is a flat plate moving straight along −y that the roller lies on, so the
 * push is along y and passes through the roller’s centre; the tip is a pad of radius r whose centre is b from the
 * pivot, and the valve, too, moves along y. Turned by θ from where both arms stand at α and β below the level, the
 * roller’s centre has gone a(sin(α + θ) − sin α) and the pad’s b(sin(β + θ) − sin β). Its ratio is a finite
 * difference of those, with no lever law in it.
 */
describe('a driven finger', () => {
  const angle = fc.double({ min: -0.4, max: 0.2, noNaN: true });
  test('the ratio at each end is that of small motions, and lift over lift lies between', () => {
    fc.assert(
      fc.property(
        angle,
        angle,
        fc.double({ min: 15, max: 30, noNaN: true }),
        fc.double({ min: 1.2, max: 2, noNaN: true }),
        fc.double({ min: 0.1, max: 0.35, noNaN: true }),
        (alpha, beta, a, times, turn) => {
          const b = a * times;
          const cam = (theta: number) => a * (Math.sin(alpha + theta) - Math.sin(alpha));
          const valve = (theta: number) => b * (Math.sin(beta + theta) - Math.sin(beta));
          const small = 1e-5;
          const local = (theta: number) =>
            (valve(theta + small) - valve(theta - small)) / (cam(theta + small) - cam(theta - small));
          const at = (theta: number) => place(b * Math.cos(beta + theta), a * Math.cos(alpha + theta), 0);
          const body = { shut: at(0), open: at(turn) };
          expectNear(number(body, 'shut.ratio'), local(0), 1e-6);
          expectNear(number(body, 'open.ratio'), local(turn), 1e-6);
          // cos(β + θ)/cos(α + θ) rises or falls throughout, as its derivative has the sign of sin(α − β).
          const overall = valve(turn) / cam(turn);
          expect(overall).toBeGreaterThanOrEqual(number(body, 'overall.0') - 1e-9);
          expect(overall).toBeLessThanOrEqual(number(body, 'overall.1') + 1e-9);
        },
      ),
    );
  });
});

test('an error as large as half its arm, or a ratio above 100, can’t be', () => {
  expect(faults({ shut: { ...place(36, 24), toCam: arm(24, 12) } })).toEqual([
    '/shut/toCam/errorLimit impossible-input',
  ]);
  expect(faults({ shut: place(36, 24), open: { ...place(36, 24), toValve: arm(36, 20) } })).toEqual([
    '/open/toValve/errorLimit impossible-input',
  ]);
  expect(faults({ shut: place(120, 1, 0) })).toEqual([
    '/shut/toCam/value impossible-input',
    '/shut/toValve/value impossible-input',
  ]);
});

test('a ratio of a hundred is still taken', () => {
  expectNear(number({ shut: place(200, 2, 0) }, 'shut.ratio'), 100);
});

test('in inches the same', () => {
  const inch = (value: number) => ({ value: inches(value / 25.4), errorLimit: inches(0.3 / 25.4) });
  const body = { shut: { toValve: inch(36), toCam: inch(24) } };
  expectNear(number(body, 'shut.interval95.0'), number({ shut: place(36, 24) }, 'shut.interval95.0'));
});

test('under fire', () => {
  expectSoundUnderFire(computation, { shut: place(36, 24), open: place(35.4, 21.9) });
}, 30_000);

describeContract(computation, { body: { shut: place(36, 24) } });

const settledOnTheEngine = ['read on the engine', 'maker'];
describeSaid(computation, {
  assumes: [
    ['one place', { shut: place(36, 24) }, ['square to the line', 'independently', 'of the place']],
    [
      'both ends',
      { shut: place(36, 24), open: place(36, 22) },
      ['square to the line', 'independently', 'only rises or only falls'],
    ],
  ],
  warns: [['one place', { shut: place(36, 24) }, settledOnTheEngine]],
});
