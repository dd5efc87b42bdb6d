import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/linkage.ts';
import { linkageBody as body } from './helpers/linkage-body.ts';
import { expectNear, expectSame } from './helpers/near.ts';
import { deg, inches, mm } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

const { registered, run, number, numbers, refused } = runner(computation);
const RAD = Math.PI / 180;

/* Figures worked out apart from the loop of arm, pushrod and bore; a closed form agrees with them. */

describe('arms .95 and 1.52, 160° apart, pushrod 7.8 at 12°, bore at 10°', () => {
  test('.600 of lift: lobe .371849, ratio at lift 1.613557, 22.766227° of turn', () => {
    expect(number(body(0.6), 'lobeLift')).toBeCloseTo(0.371849, 6);
    expect(number(body(0.6), 'ratioAtLift')).toBeCloseTo(1.613557, 6);
    expect(number(body(0.6), 'rotation')).toBeCloseTo(22.766227, 6);
  });

  test('the instantaneous ratio runs from 1.570308 by 1.614225 to 1.656405', () => {
    const ratios = numbers(body(0.6), 'instantaneous', 'ratio');
    expect(ratios[0]).toBeCloseTo(1.570308, 6);
    expect(ratios[(ratios.length - 1) / 2]).toBeCloseTo(1.614225, 6);
    expect(ratios.at(-1)).toBeCloseTo(1.656405, 6);
    expect(number(body(0.3), 'ratioAtLift')).toBeCloseTo(1.592326, 6);
  });

  test.each([
    [0.1, 0.1582026, 1.582026, 1.593706],
    [0.2, 0.3187347, 1.593674, 1.616908],
    [0.3, 0.481579, 1.605263, 1.639952],
  ])('at lobe lift %f', (lobe, valve, atLift, instantaneous) => {
    expect(Math.abs(number(body(valve), 'lobeLift') - lobe)).toBeLessThan(6e-8);
    expect(number(body(valve), 'ratioAtLift')).toBeCloseTo(atLift, 6);
    expect(numbers(body(valve), 'instantaneous', 'ratio').at(-1)).toBeCloseTo(instantaneous, 6);
    // The two ratios are not the same thing: taking one for the other would show here.
    expect(instantaneous - atLift).toBeGreaterThan(0.01);
  });

  test('lash .016 lowers the ratio at lift .20 to 1.513674', () => {
    expect((0.3187347 - 0.016) / number(body(0.3187347), 'lobeLift')).toBeCloseTo(1.513674, 5);
  });

  test('a line through lobe lifts .05 to .35 has an intercept of −.003481 with no lash at all', () => {
    const lobes = [0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35];
    const valves = lobes.map((lobe) => {
      let [low, high] = [lobe, 2 * lobe];
      for (let step = 0; step < 60; step += 1) {
        const middle = (low + high) / 2;
        if (number(body(middle), 'lobeLift') < lobe) low = middle;
        else high = middle;
      }
      return low;
    });
    const mean = (list: readonly number[]) => list.reduce((sum, each) => sum + each, 0) / list.length;
    const [x, y] = [mean(lobes), mean(valves)];
    const slope =
      lobes.reduce((sum, each, index) => sum + (each - x) * ((valves[index] ?? 0) - y), 0) /
      lobes.reduce((sum, each) => sum + (each - x) ** 2, 0);
    expect(y - slope * x).toBeCloseTo(-0.003481, 6);
  });
});

/**
 * A pushrod so long that it stays parallel, along its bore: arms 1 and 1.5, valve arm from 10° above square. The
 * cup's motion stands at δ to the pushrod; δ grows with the turn. Worked out apart.
 */
const parallel = (delta: number, turn: number) => {
  const lift = 1.5 * (Math.sin(10 * RAD) - Math.sin((10 - turn) * RAD));
  // The cup moves at right angles to its arm; with the pushrod straight up, δ = −(10 + armAngle − 180).
  return body(lift, {
    pivotToTip: inches(1.5),
    pivotToCup: inches(1),
    armAngle: deg(170 - delta),
    tipAngleClosed: deg(10),
    pushrodLength: inches(100),
    pushrodAngle: deg(0),
    lifterBoreAngle: deg(0),
  });
};

describe('a long pushrod along its bore (figures for a parallel one, met as nearly as 100 in allow)', () => {
  test.each([
    [-10, [1.5, 1.5, 1.5, 1.5], [1.5, 1.5, 1.5]],
    [0, [1.488584, 1.5, 1.511503, 1.52314], [1.477212, 1.52314, 1.572016]],
    [-15, [1.523275, 1.517344, 1.511503, 1.50573], [1.529322, 1.50573, 1.482854]],
  ] as const)('δ %i° at closed', (delta, atLift, instantaneous) => {
    [5, 10, 15, 20].forEach((turn, index) => {
      const ratio = number(parallel(delta, turn), 'ratioAtLift');
      expect(Math.abs(ratio - (atLift[index] ?? Number.NaN))).toBeLessThan(0.003);
    });
    const ratios = numbers(parallel(delta, 20), 'instantaneous', 'ratio');
    [ratios[0], ratios[10], ratios[20]].forEach((ratio, index) => {
      expect(Math.abs((ratio ?? 0) - (instantaneous[index] ?? Number.NaN))).toBeLessThan(0.006);
    });
  });
});

describe('any linkage', () => {
  const linkages = fc
    .record({
      arm: fc.double({ min: 1, max: 2, noNaN: true }),
      cup: fc.double({ min: 0.6, max: 1.3, noNaN: true }),
      beta: fc.double({ min: 145, max: 180, noNaN: true }),
      closed: fc.double({ min: 0, max: 16, noNaN: true }),
      rod: fc.double({ min: 3, max: 12, noNaN: true }),
      lean: fc.double({ min: -15, max: 15, noNaN: true }),
      bore: fc.double({ min: -15, max: 15, noNaN: true }),
      // Above .4 of the arm a cup at 145° may come to its dead point, which is refused.
      share: fc.double({ min: 0.03, max: 0.4, noNaN: true }),
    })
    .map(({ share, ...rest }) => ({ ...rest, lift: share * rest.arm }))
    .map((each) => ({
      each,
      given: body(each.lift, {
        pivotToTip: inches(each.arm),
        pivotToCup: inches(each.cup),
        armAngle: deg(each.beta),
        tipAngleClosed: deg(each.closed),
        pushrodLength: inches(each.rod),
        pushrodAngle: deg(each.lean),
        lifterBoreAngle: deg(each.bore),
      }),
    }));

  test('the pushrod keeps its length: cup and lifter by their coordinates', () => {
    fc.assert(
      fc.property(linkages, ({ each, given }) => {
        const turn = number(given, 'rotation') * RAD;
        const lobe = number(given, 'lobeLift');
        const cupAt = (rotation: number) => {
          const angle = (each.closed + each.beta) * RAD - rotation;
          return [each.cup * Math.cos(angle), each.cup * Math.sin(angle)] as const;
        };
        const [x0, y0] = cupAt(0);
        const [x1, y1] = cupAt(turn);
        const lifterX = x0 - each.rod * Math.sin(each.lean * RAD) + lobe * Math.sin(each.bore * RAD);
        const lifterY = y0 - each.rod * Math.cos(each.lean * RAD) + lobe * Math.cos(each.bore * RAD);
        expect(Math.hypot(x1 - lifterX, y1 - lifterY)).toBeCloseTo(each.rod, 9);
        expect(each.arm * (Math.sin(each.closed * RAD) - Math.sin(each.closed * RAD - turn))).toBeCloseTo(
          each.lift,
          9,
        );
        expectNear(number(given, 'ratioAtLift'), each.lift / lobe, 1e-9);
      }),
    );
  });

  test('the instantaneous ratio is the slope of valve lift over lobe lift', () => {
    fc.assert(
      fc.property(linkages, ({ each, given }) => {
        const step = each.lift * 1e-4;
        const lobeAt = (lift: number) => number({ ...given, netLift: inches(lift) }, 'lobeLift');
        const slope = (2 * step) / (lobeAt(each.lift + step) - lobeAt(each.lift - step));
        expectNear(numbers(given, 'instantaneous', 'ratio').at(-1) ?? 0, slope, 1e-6);
        // And the mean of 1/ratio over valve lift is the lobe lift over valve lift.
        const ratios = numbers(given, 'instantaneous', 'ratio');
        const lifts = numbers(given, 'instantaneous', 'valveLift');
        const lobe = ratios.slice(1).reduce((sum, ratio, index) => {
          const width = (lifts[index + 1] ?? 0) - (lifts[index] ?? 0);
          return sum + (width * (1 / ratio + 1 / (ratios[index] ?? 1))) / 2;
        }, 0);
        expectNear(lobe, number(given, 'lobeLift'), 1e-3);
      }),
      { numRuns: 50 },
    );
  });

  test('the scale does not matter, nor the unit', () => {
    fc.assert(
      fc.property(linkages, ({ each, given }) => {
        const bigger = {
          ...given,
          pivotToTip: mm(each.arm * 50.8),
          pivotToCup: mm(each.cup * 50.8),
          pushrodLength: mm(each.rod * 50.8),
          netLift: mm(each.lift * 50.8),
        };
        expectNear(number(bigger, 'ratioAtLift'), number(given, 'ratioAtLift'), 1e-9);
        expectNear(number(bigger, 'lobeLift'), 2 * number(given, 'lobeLift'), 1e-9);
      }),
      { numRuns: 50 },
    );
  });
});

describe('input that can’t be', () => {
  test('lift over twice the arm, or past the end of its way', () => {
    expect(refused(body(3.05))).toEqual(['/netLift impossible-input', '/pivotToTip impossible-input']);
    expect(refused(body(2.9, { tipAngleClosed: deg(-20) }))).toEqual([
      '/netLift impossible-input',
      '/tipAngleClosed impossible-input',
    ]);
    expect(refused(body(0.5, { tipAngleClosed: deg(90) }))).toEqual(['/tipAngleClosed impossible-input']);
  });
  test('a pushrod that can’t be pushed by its lifter', () => {
    expect(refused(body(0.5, { pushrodAngle: deg(110) }))).toEqual([
      '/pushrodAngle impossible-input',
      '/lifterBoreAngle impossible-input',
    ]);
  });
  test('a pushrod too short to follow the cup', () => {
    expect(refused(body(0.6, { pushrodLength: inches(0.05), pushrodAngle: deg(10) }))).toContain(
      '/pushrodLength impossible-input',
    );
  });
  test('a cup arm on the valve’s side: a rising lifter would close the valve', () => {
    expect(refused(body(0.6, { armAngle: deg(20) }))).toEqual([
      '/armAngle impossible-input',
      '/pushrodAngle impossible-input',
      '/lifterBoreAngle impossible-input',
    ]);
  });
  test('a cup that comes to its dead point on the way', () => {
    expect(refused(body(0.6, { armAngle: deg(85) }))).toContain('/armAngle impossible-input');
  });
  test('under fire', () => {
    expectSoundUnderFire(computation, body(0.6));
  }, 30_000);
});

test('the worked example', () => {
  expectSame(run(registered.example.inputs).result, registered.example.result);
});
