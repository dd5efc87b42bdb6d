import { describe, expect, test } from 'vitest';
import { figureRows } from '../../../server/mechanics/consequences/figure-rows.ts';
import { gapBeforeOf, gapRow } from '../../../server/mechanics/consequences/gap-row.ts';
import { closestOf } from '../../../server/mechanics/consequences/piston-gap.ts';
import { cupMove } from '../../../server/mechanics/consequences/pushrod-gap.ts';
import { changeByScan } from '../../../server/mechanics/consequences/scan-gap.ts';
import type { ConsequenceInput, FigureRow, KnownGap } from '../../../server/mechanics/consequences/types.ts';
import { DEG, IN, LBF } from '../../../server/mechanics/kit/si.ts';
import { motionLaw } from '../../../server/mechanics/motion-laws/motion-law.ts';
import { expectNear } from '../helpers/near.ts';
import { body, number } from '../helpers/piston-to-valve-engine.ts';
import { deg, inches } from '../helpers/quantities.ts';
import { CASE } from './case.ts';

const half = (gap: KnownGap | undefined): number => ((gap?.high ?? Number.NaN) - (gap?.value ?? 0)) / IN;
const halfOf = (name: FigureRow['name'], unit: number, input: ConsequenceInput = CASE) =>
  (figureRows(input).find((row) => row.name === name)?.halfWidth ?? Number.NaN) / unit;

/** The case’s ratios: 1.5 ± .03 and 1.6 ± .006; its lobe .3125, so that the spring opens at 130 + 350·.3125·r. */
const load = (ratio: number) => 130 + 350 * 0.3125 * ratio;

describe('half-widths of figures, by hand', () => {
  test('a lever’s load grows with the open load and again with the ratio', () => {
    const pushrod = load(1.606) * 1.606 - load(1.6) * 1.6;
    expectNear(halfOf('pushrod-load', LBF), Math.hypot(pushrod, 0.1 * load(1.6) * 1.6));
    const pivot = load(1.606) * 2.606 - load(1.6) * 2.6;
    expectNear(halfOf('pivot-load', LBF), Math.hypot(pivot, 0.1 * load(1.6) * 2.6));
  });

  test('the least sweep R − √(R² − (h/2)²), its arm good to .010; the pivot lies h/2 below', () => {
    // h = .500 ± .3125·.006.
    const sweep = (lift: number, arm: number) => arm - Math.sqrt(arm ** 2 - (lift / 2) ** 2);
    const ofLift = sweep(0.501875, 1.48) - sweep(0.5, 1.48);
    const ofArm = sweep(0.5, 1.47) - sweep(0.5, 1.48);
    expectNear(halfOf('least-sweep', IN), Math.hypot(ofLift, ofArm), 1e-7);
    expectNear(halfOf('pivot-offset', IN), 0.001875 / 2, 1e-7);
  });

  test('the cup: b(1/r₁ − 1/r₂) by its three parts', () => {
    const { halfWidth } = cupMove(
      1.48 * IN,
      { value: 1.5, halfWidth: 0.03 },
      { value: 1.6, halfWidth: 0.006 },
    );
    const wanted = Math.hypot(0.01 * (1 / 1.5 - 1 / 1.6), (1.48 / 2.25) * 0.03, (1.48 / 2.56) * 0.006);
    expectNear(halfWidth / IN, wanted);
  });

  test('the same gap with the same arms is what was read, as good as such a reading', () => {
    const before = gapBeforeOf(CASE, 'pushrod-to-head');
    expectNear((before?.value ?? 0) / IN, 0.09);
    expectNear(half(before), 0.005);
  });
});

/** Lift of the case’s lobe at crank degrees after top: the 4-5-6-7 law, 140° from nose to seat. */
const lobe = (degrees: number) => 0.3125 * motionLaw('4-5-6-7').at(1 - (106 - degrees) / 140).s;

describe('piston to valve', () => {
  test('lobe there × U of the ratio, .005 of the closed gap, and what 2° early costs, together', () => {
    const early = number(body({ advance: deg(2) }), 'margin');
    const wanted = Math.hypot(lobe(7.002) * 0.006, 0.005, number(body(), 'margin') - early);
    expect(half(gapRow(CASE, 'piston-to-valve').after)).toBeCloseTo(wanted, 7);
  });

  test('a pin off the bore’s line moves it, as the sweep has it', () => {
    const offset: ConsequenceInput = { ...CASE, crank: { ...CASE.crank, pinOffset: 0.06 * IN } };
    const wanted = number(body({ pinOffset: inches(0.06) }), 'margin');
    expect(Math.abs(wanted - number(body(), 'margin'))).toBeGreaterThan(1e-6);
    expect((gapRow(offset, 'piston-to-valve').after?.value ?? 0) / IN).toBeCloseTo(wanted, 9);
  });

  test('where they come closest: .377089 at 7.002° past top, worked out apart, the valve open by its lift there', () => {
    const closest = closestOf(CASE);
    expect((closest?.gap ?? 0) / IN).toBeCloseTo(0.377089, 6);
    expect((closest?.crankAngle ?? 0) / DEG).toBeCloseTo(7.002, 3);
    expect((closest?.lift ?? 0) / IN).toBeCloseTo(1.6 * lobe(7.002), 5);
    const { after: _after, ...noRatio } = CASE;
    const { closedGapAtTdc: _closed, ...noGap } = CASE;
    for (const input of [noRatio, noGap, { ...CASE, crank: {} }]) expect(closestOf(input)).toBeUndefined();
  });

  const read = { 'piston-to-valve': { value: 0.12 * IN, low: 0.118 * IN, high: 0.122 * IN } };
  const both = Math.hypot(0.03, 0.006);

  test('read before, by crank geometry: less by what two sweeps differ by, whatever the closed gap', () => {
    const at = (ratio: number) => ({
      profile: {
        lobeLift: inches(0.3125),
        centreline: deg(106),
        durations: [{ atLift: inches(0), duration: deg(280) }],
      },
      ratio,
    });
    const lost = number(body(at(1.5)), 'margin') - number(body(at(1.6)), 'margin');
    const { after } = gapRow({ ...CASE, readBefore: read }, 'piston-to-valve');
    expect((after?.value ?? 0) / IN).toBeCloseTo(0.12 - lost, 9);
    expect((after?.low ?? 0) / IN).toBeCloseTo(0.118 - lost - lobe(7.002) * both, 5);
  });

  test('the lobe’s lift read there goes before the geometry: .120 − .140·.1', () => {
    const { after } = gapRow({ ...CASE, readBefore: read, lobeLiftAtClosest: 0.14 * IN }, 'piston-to-valve');
    expect((after?.value ?? 0) / IN).toBeCloseTo(0.106, 12);
    expect((after?.low ?? 0) / IN).toBeCloseTo(0.118 - 0.014 - 0.14 * both, 12);
  });

  test('with neither: half the whole lobe’s share either way, and the ratios’ own error besides', () => {
    const { after } = gapRow({ ...CASE, crank: {}, lobe: {}, readBefore: read }, 'piston-to-valve');
    const most = 0.3125;
    expect((after?.low ?? 0) / IN).toBeCloseTo(0.118 - most * 0.1 - most * both, 12);
    expect((after?.high ?? 0) / IN).toBeCloseTo(0.122 + most * both, 12);
  });
});

describe('a scan moved by the ratio', () => {
  /** Gap .1 + .0004(θ − 8)² and lobe .05 + .004θ + .0001θ², θ in degrees, lengths in any unit. */
  const stations = Array.from({ length: 31 }, (_, at) => at - 5).map((degree) => ({
    crankAngle: degree * DEG,
    gap: 0.1 + 0.0004 * (degree - 8) ** 2,
  }));
  const lobeOf = (degree: number) => 0.05 + 0.004 * degree + 0.0001 * degree ** 2;
  const lobeAt = (angles: readonly number[]) => angles.map((angle) => lobeOf(angle / DEG));
  const [before, after] = [
    { value: 1.5, halfWidth: 0.03 },
    { value: 1.6, halfWidth: 0.006 },
  ];

  test('is .00039θ² − .0068θ + .1206, by hand: least .1206 − .0068²/.00156 at .0068/.00078', () => {
    const { value, halfWidth } = changeByScan({ stations, error: 0, lash: 0 }, before, after, lobeAt);
    expect(value).toBeCloseTo(0.1206 - 0.0068 ** 2 / 0.00156 - 0.1, 9);
    const where = 0.0068 / 0.00078;
    // 2° of timing move the lobe’s lift there by most on the rising side.
    const ofTiming = (lobeOf(where + 2) - lobeOf(where)) * 0.1;
    const there = lobeOf(where);
    expect(halfWidth).toBeCloseTo(Math.hypot(there * 0.03, there * 0.006, ofTiming), 7);
  });

  test('is as it was where the lash takes up all the lift', () => {
    const { value } = changeByScan({ stations, error: 0, lash: 0.9 }, before, after, lobeAt);
    expect(value).toBeCloseTo(0, 12);
  });

  test('on a falling lobe the other side counts', () => {
    const falling = (angles: readonly number[]) => angles.map((angle) => lobeOf(20 - angle / DEG));
    const { halfWidth } = changeByScan({ stations, error: 0, lash: 0 }, before, after, falling);
    // .05 + .004(20 − θ) + .0001(20 − θ)² is .17 − .008θ + .0001θ²: least at .0056/.00078.
    const there = 0.0056 / 0.00078;
    const at = (degree: number) => lobeOf(20 - degree);
    const ofTiming = (at(there - 2) - at(there)) * 0.1;
    expect(halfWidth).toBeCloseTo(Math.hypot(at(there) * 0.03, at(there) * 0.006, ofTiming), 7);
  });
});
