import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/centreline.ts';
import { expectSame } from './helpers/near.ts';
import { deg, inches } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

const { registered, run, number, refused } = runner(computation);
const event = (value: number, side: string) => ({ ...deg(value), side });
const wheel = (before: number, after: number, more: object = {}) => ({
  before: deg(before),
  after: deg(after),
  ...more,
});

describe('printed figures', () => {
  test('60 and 145.5 after TDC: 102.75 (degreeing text)', () => {
    expect(number(wheel(60, 145.5), 'centreline')).toBeCloseTo(102.75, 10);
  });
  test('opens 10 ATDC, closes 39 ABDC: 114.5 (degreeing text)', () => {
    const given = { opens: event(10, 'ATDC'), closes: event(39, 'ABDC') };
    expect(number(given, 'centreline')).toBeCloseTo(114.5, 10);
  });
  test('opens 77 BBDC, closes 29 ATDC: exhaust 114 (cam-timing article)', () => {
    const given = { opens: '77 BBDC', closes: '29 ATDC', side: 'exhaust' };
    expect(number(given, 'centreline')).toBeCloseTo(114, 10);
  });
});

describe('against the card, positive is earlier', () => {
  test('intake: card − centreline', () => {
    expect(number(wheel(60, 145.5, { card: deg(106) }), 'advanceAgainstCard')).toBeCloseTo(3.25, 10);
  });
  test('exhaust: centreline − card, from a 360° wheel or from readings before TDC', () => {
    const more = { side: 'exhaust', card: deg(110) };
    for (const given of [wheel(203, 289, more), wheel(-157, -71, more), wheel(563, 649, more)]) {
      expect(number(given, 'centreline')).toBeCloseTo(114, 10);
      expect(number(given, 'advanceAgainstCard')).toBeCloseTo(4, 10);
    }
  });
  test('left out without a card', () => {
    expect(run(wheel(60, 145.5)).result).not.toHaveProperty('advanceAgainstCard');
  });
});

describe('a pointer that was left where it was', () => {
  // Stop met at 36.75 after and 35.25 before (degreeing text): the wheel reads .75 too much after TDC.
  const off = { pointerOff: deg(0.75) };

  test('takes its error off every reading after TDC, from either form', () => {
    expect(number(wheel(60.75, 146.25, off), 'centreline')).toBeCloseTo(102.75, 10);
    const events = { opens: event(10.75, 'ATDC'), closes: event(39.75, 'ABDC'), ...off };
    expect(number(events, 'centreline')).toBeCloseTo(114.5, 10);
    const before = { opens: event(30.25, 'BTDC'), closes: event(63.75, 'ABDC'), ...off };
    // Cam-timing article: 31 BTDC and 63 ABDC are 274° about 106.
    expect(number(before, 'centreline')).toBeCloseTo(106, 10);
    expect(number(before, 'duration')).toBeCloseTo(274, 10);
  });

  test('of an exhaust the error goes the other way, as it is told before TDC', () => {
    expect(number(wheel(-156.25, -70.25, { side: 'exhaust', ...off }), 'centreline')).toBeCloseTo(114, 10);
  });
});

describe('events against the card', () => {
  const late = { opens: event(10, 'ATDC'), closes: event(39, 'ABDC') };

  test('opens 10 ATDC, closes 39 ABDC: 209 open (degreeing text), 4 over a card of 205', () => {
    expect(number(late, 'duration')).toBeCloseTo(209, 10);
    expect(number({ ...late, cardDuration: deg(205) }, 'durationOverCard')).toBeCloseTo(4, 10);
    expect(run(wheel(60, 145.5, { cardDuration: deg(205) })).result).not.toHaveProperty('duration');
  });

  test('a duration over 2° off the card is asked about, at 2° it is not', () => {
    const asked = (card: number) => run({ ...late, cardDuration: deg(card) }).cautions.join();
    expect([asked(206.9), asked(211.1)].every((text) => text.includes('right side of its dead centre'))).toBe(
      true,
    );
    expect(asked(207.5)).not.toContain('dead centre');
    // The side of one event swapped is twice its angle off: a card of 209 against 10 BTDC.
    expect(run({ ...late, opens: event(10, 'BTDC'), cardDuration: deg(209) }).cautions.join()).toContain(
      'dead centre',
    );
  });

  test('earlier takes from the intake’s gap, later from the exhaust’s (circle-track article)', () => {
    const costs = (card: number, side = 'intake') =>
      run({ ...(side === 'intake' ? wheel(60, 145.5) : wheel(-157, -71)), side, card: deg(card) }).result;
    expect(costs(106)).toMatchObject({ costs: 'intake' });
    expect(costs(100)).toMatchObject({ costs: 'exhaust' });
    expect(costs(102.75)).toMatchObject({ costs: 'neither' });
    expect(costs(110, 'exhaust')).toMatchObject({ costs: 'intake' });
    expect(costs(118, 'exhaust')).toMatchObject({ costs: 'exhaust' });
  });
});

test('a peak between two equal lifts of a symmetric lobe is found again', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 60, max: 150, noNaN: true }),
      fc.double({ min: 1, max: 150, noNaN: true }),
      fc.constantFrom('intake', 'exhaust'),
      (peak, half, side) => {
        const at = side === 'intake' ? peak : -peak;
        expect(number(wheel(at - half, at + half, { side }), 'centreline')).toBeCloseTo(peak, 9);
        // The same lobe by its events: half its duration less the event by TDC, duration 2·half.
        const [atTop, atBottom] = [half - peak, half + peak - 180];
        const opens = side === 'intake' ? event(atTop, 'BTDC') : event(atBottom, 'BBDC');
        const closes = side === 'intake' ? event(atBottom, 'ABDC') : event(atTop, 'ATDC');
        expect(number({ opens, closes, side }, 'centreline')).toBeCloseTo(peak, 9);
      },
    ),
  );
});

describe('input that can’t be', () => {
  test('a side of the wrong dead centre, beside other faults', () => {
    const given = { opens: event(10, 'BBDC'), closes: event(39, 'BTDC'), card: 3 };
    expect(refused(given)).toEqual([
      '/card wrong-dimension',
      '/opens/side not-allowed',
      '/closes/side not-allowed',
    ]);
    const exhaust = { opens: event(10, 'BTDC'), closes: event(39, 'ATDC'), side: 'exhaust' };
    expect(refused(exhaust)).toEqual(['/opens/side not-allowed']);
  });
  test('half a form, both, none', () => {
    expect(refused({})).toEqual(['/before required', '/after required']);
    expect(refused({ before: deg(60) })).toEqual(['/after required']);
    expect(refused({ closes: event(39, 'ABDC') })).toEqual(['/opens required']);
    expect(refused({ ...wheel(60, 145), opens: event(1, 'BTDC') })).toEqual(['/opens not-allowed']);
    expect(refused({ before: 60, after: deg(145) })).toEqual(['/before wrong-dimension']);
  });
  test('readings the wrong way round, 720° apart, a negative card, an unknown side', () => {
    const both = ['/before impossible-input', '/after impossible-input'];
    expect(refused(wheel(145.5, 60))).toEqual(both);
    expect(refused(wheel(-400, 400))).toEqual(both);
    expect(refused(wheel(60, 145, { card: deg(-106), side: 'inlet' }))).toEqual([
      '/side not-allowed',
      '/card out-of-range',
    ]);
    expect(refused({ before: inches(1), after: deg(3) })).toEqual(['/before wrong-dimension']);
  });
  test('under fire', () => {
    expectSoundUnderFire(computation, { ...wheel(60, 145.5), card: deg(106) });
    expectSoundUnderFire(computation, {
      opens: event(31, 'BTDC'),
      closes: event(63, 'ABDC'),
      side: 'intake',
    });
  }, 30_000);
});

test('the worked example', () => {
  expectSame(run(registered.example.inputs).result, registered.example.result);
});
