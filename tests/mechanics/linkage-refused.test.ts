import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/linkage.ts';
import { computation as roller } from '../../server/mechanics/computations/roller-sweep.ts';
import { ARM, linkageBody as body, CLOSED } from './helpers/linkage-body.ts';
import { deg, inches } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { describeSaid } from './helpers/said.ts';

const { refused, number } = runner(computation);

describe('what can’t be put together, each limit from both sides', () => {
  const impossible = (...fields: string[]) => fields.map((field) => `/${field} impossible-input`);
  test.each([
    ['lift over twice the arm', body(3.05), ['netLift', 'pivotToTip']],
    // sin φ₀ = .3/1.52, so that the end of the way is at 1.82 in.
    ['at the end of the arm’s way', body(1.8201), ['netLift', 'tipAngleClosed']],
    ['an arm along the valve', body(0.3, { tipAngleClosed: deg(90) }), ['tipAngleClosed']],
    ['an arm along the valve, the other way', body(0.3, { tipAngleClosed: deg(-90) }), ['tipAngleClosed']],
    [
      'a pushrod square to its bore',
      body(0.3, { pushrodAngle: deg(100) }),
      ['pushrodAngle', 'lifterBoreAngle'],
    ],
    ['past square', body(0.3, { pushrodAngle: deg(101) }), ['pushrodAngle', 'lifterBoreAngle']],
    ['past square the other way', body(0.3, { pushrodAngle: deg(-81) }), ['pushrodAngle', 'lifterBoreAngle']],
    [
      'both at once: each is told',
      body(3.05, { pushrodAngle: deg(101) }),
      ['netLift', 'pivotToTip', 'pushrodAngle', 'lifterBoreAngle'],
    ],
  ])('%s', (_what, given, wanted) => {
    expect(refused(given)).toEqual(impossible(...wanted));
  });

  test('signs of the two angles are their own: a bore and a pushrod both leaning by 50° go together', () => {
    expect(refused(body(0.3, { pushrodAngle: deg(50), lifterBoreAngle: deg(50) }))).toEqual([]);
  });

  test('a pushrod shorter than the cup is aside of its bore does not reach it', () => {
    const short = body(0.6, { pushrodLength: inches(0.05) });
    expect(refused(short)).toEqual(impossible('pushrodLength', 'pivotToCup'));
  });

  test('a cup on the valve’s side is pushed the wrong way', () => {
    expect(refused(body(0.3, { armAngle: deg(10) }))).toEqual(
      impossible('armAngle', 'pushrodAngle', 'lifterBoreAngle'),
    );
  });
});

test('a lift of a millionth of an inch keeps its figures: the ratio is the instantaneous one at the seat', () => {
  // 1.570308 at the seat, worked out apart from the loop (see the linkage’s own test).
  expect(number(body(1e-6), 'ratioAtLift')).toBeCloseTo(1.570308, 5);
  expect(number(body(1e-9), 'ratioAtLift')).toBeCloseTo(1.570308, 5);
});

test('turn and lift close the loop to the last figures', () => {
  for (const netLift of [0.01, 0.3, 0.6, 0.9, 1.2]) {
    const turned = (number(body(netLift), 'rotation') * Math.PI) / 180;
    const closed = (CLOSED * Math.PI) / 180;
    expect(ARM * (Math.sin(closed) - Math.sin(closed - turned))).toBeCloseTo(netLift, 9);
  }
});

describeSaid(computation, {
  assumes: [['a linkage', body(0.6), ['rigid parts', 'from closed']]],
  warns: [['a linkage', body(0.6), ['at the crank']]],
});

const sweep = (netLift: number, setAt: string) => ({
  pivotToTip: inches(1.5),
  netLift: inches(netLift),
  setAt,
});
describeSaid(roller, {
  assumes: [['a roller', sweep(0.6, 'mid-lift'), ['flat and square', 'no stud flex', 'in ink']]],
  warns: [['a roller', sweep(0.6, 'mid-lift'), ['at the crank']]],
});

test.each([
  [2.999, 'mid-lift', 0],
  [3.001, 'mid-lift', 2],
  [1.499, 'closed', 0],
  [1.501, 'closed', 2],
  [1.499, 'open', 0],
  [1.501, 'open', 2],
])('an arm of 1.5 in lifts %d in set square at %s with %d faults', (lift, setAt, count) => {
  expect(runner(roller).refused(sweep(lift, setAt))).toHaveLength(count);
});
