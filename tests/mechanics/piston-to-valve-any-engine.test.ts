import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { body, law, number, profile, RAD, readings } from './helpers/piston-to-valve-engine.ts';
import { deg, inches, mm } from './helpers/quantities.ts';

describe('any engine', () => {
  const cases = fc.record({
    stroke: fc.double({ min: 2, max: 5, noNaN: true }),
    rodOver: fc.double({ min: 1.4, max: 2.2, noNaN: true }),
    offset: fc.double({ min: -0.1, max: 0.1, noNaN: true }),
    tilt: fc.double({ min: 0, max: 40, noNaN: true }),
    floor: fc.constantFrom('pocket', 'flat'),
    gap: fc.double({ min: 0, max: 0.6, noNaN: true }),
    side: fc.constantFrom('intake', 'exhaust'),
    lift: fc.double({ min: 0.2, max: 0.5, noNaN: true }),
    centreline: fc.double({ min: 90, max: 130, noNaN: true }),
    seat: fc.double({ min: 200, max: 340, noNaN: true }),
    ratio: fc.double({ min: 1, max: 2, noNaN: true }),
    lash: fc.double({ min: 0, max: 0.03, noNaN: true }),
    advance: fc.double({ min: -10, max: 10, noNaN: true }),
  });

  test('no gap of a plain scan of the whole cycle is less, and one is as small to .000001', () => {
    fc.assert(
      fc.property(cases, (each) => {
        const given = {
          stroke: inches(each.stroke),
          rodLength: inches(each.stroke * each.rodOver),
          pinOffset: inches(each.offset),
          valveAngle: deg(each.tilt),
          floor: each.floor,
          closedGapAtTdc: inches(each.gap),
          side: each.side,
          profile: profile(each.lift, each.centreline, each.seat),
          ratio: each.ratio,
          lash: inches(each.lash),
          advance: deg(each.advance),
        };
        const [a, l, e] = [each.stroke / 2, each.stroke * each.rodOver, each.offset];
        const tdc = Math.asin(e / (l + a));
        const top = Math.sqrt((l + a) ** 2 - e ** 2);
        const peak = (each.side === 'intake' ? 1 : -1) * each.centreline - each.advance;
        const per = each.floor === 'pocket' ? Math.cos(each.tilt * RAD) : 1 / Math.cos(each.tilt * RAD);
        let least = Number.POSITIVE_INFINITY;
        for (let step = -18_000; step <= 18_000; step += 1) {
          const angle = step / 50;
          const crank = angle * RAD + tdc;
          const drop = top - a * Math.cos(crank) - Math.sqrt(l ** 2 - (a * Math.sin(crank) - e) ** 2);
          const away = Math.abs(((((angle - peak + 360) % 720) + 720) % 720) - 360);
          const share = Math.max(0, 1 - away / (each.seat / 2));
          const lift = Math.max(0, each.lift * law.at(share).s * each.ratio - each.lash);
          least = Math.min(least, each.gap + drop * per - lift);
        }
        const margin = number(given, 'margin');
        expect(margin).toBeLessThanOrEqual(least + 1e-12);
        expect(least - margin).toBeLessThan(1e-6);
      }),
      { numRuns: 40 },
    );
  }, 60_000);

  test('metric in, inch out', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.6, noNaN: true }), (gap) => {
        const metric = body({ stroke: mm(88.392), rodLength: mm(144.78), closedGapAtTdc: mm(gap * 25.4) });
        const inInches = number(body({ closedGapAtTdc: inches(gap) }), 'margin');
        expect(number(metric, 'margin')).toBeCloseTo(inInches, 12);
        expect(number(metric, 'margin', 'metric')).toBeCloseTo(inInches * 25.4, 10);
      }),
      { numRuns: 20 },
    );
  });
});

test('advance moves readings as it moves a card', () => {
  const { profile: _card, ...rest } = body();
  for (const advance of [deg(4), deg(-4)]) {
    const byReadings = number({ ...rest, lifts: readings(-40, 250, 1), advance }, 'margin');
    expect(Math.abs(byReadings - number(body({ advance }), 'margin'))).toBeLessThan(2e-6);
  }
});

test('a bump under half a degree wide is not stepped over', () => {
  const { profile: _card, ...rest } = body();
  const bump = [
    [0, 0],
    [41, 0],
    [41.2, 0.4],
    [41.4, 0],
    [90, 0],
  ] as const;
  const lifts = bump.map(([angle, lift]) => ({ crankAngle: deg(angle), lift: inches(lift) }));
  const drop = 7.44 - 1.74 * Math.cos(41.2 * RAD) - Math.sqrt(5.7 ** 2 - (1.74 * Math.sin(41.2 * RAD)) ** 2);
  const given = { ...rest, lifts, ratio: 2 };
  expect(number(given, 'margin')).toBeLessThanOrEqual(0.42 + drop * Math.cos(23 * RAD) - 0.8 + 1e-12);
  expect(number(given, 'atCrankAngle')).toBeCloseTo(41.2, 2);
});

test('readings a whole cycle on are the same readings', () => {
  const { profile: _card, ...rest } = body();
  const later = readings(-40, 250, 2).map((each) => ({
    ...each,
    crankAngle: deg(each.crankAngle.value + 720),
  }));
  expect(number({ ...rest, lifts: later }, 'margin')).toBeCloseTo(
    number({ ...rest, lifts: readings(-40, 250, 2) }, 'margin'),
    10,
  );
});
