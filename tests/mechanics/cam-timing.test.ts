import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/cam-timing.ts';
import { expectNear, expectSame } from './helpers/near.ts';
import { deg, inches } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

const { registered, run, number, refused } = runner(computation);
const event = (value: number, side: string) => ({ ...deg(value), side });

const byEvents = (io: number, ic: number, eo: number, ec: number) => ({
  intake: { opens: event(io, 'BTDC'), closes: event(ic, 'ABDC') },
  exhaust: { opens: event(eo, 'BBDC'), closes: event(ec, 'ATDC') },
});
const byCentrelines = (di: number, icl: number, de: number, ecl: number) => ({
  intake: { duration: deg(di), centreline: deg(icl) },
  exhaust: { duration: deg(de), centreline: deg(ecl) },
});

/** IO, IC, EO, EC, then DI, DE, ICL, ECL, LSA, overlap, advance. */
const ROWS = {
  // A printed cam-timing article; its lobe separation and overlap by the definitions.
  'printed card, 4° advanced': [31, 63, 77, 29, 274, 286, 106, 114, 110, 60, 4],
  // A printed table of events of one cam moved about; the other columns by the definitions.
  'printed events, straight up': [20, 60, 60, 20, 260, 260, 110, 110, 110, 40, 0],
  'printed events, 5° early': [25, 55, 65, 15, 260, 260, 105, 115, 110, 40, 5],
  'printed events, 5° late': [15, 65, 55, 25, 260, 260, 115, 105, 110, 40, -5],
  'printed events, tighter lobes': [25, 55, 55, 25, 260, 260, 105, 105, 105, 50, 0],
  'worked by hand, at .050': [9, 41, 52, 4, 230, 236, 106, 114, 110, 13, 4],
} as const;

const NAMES = [
  'intakeDuration',
  'exhaustDuration',
  'intakeCentreline',
  'exhaustCentreline',
  'lobeSeparation',
  'overlap',
  'advance',
] as const;

describe.each(Object.entries(ROWS))('%s', (_title, row) => {
  const [io, ic, eo, ec, ...rest] = row;

  test('from its events', () => {
    const answer = run(byEvents(io, ic, eo, ec));
    NAMES.forEach((name, index) => {
      const wanted = rest[index] ?? Number.NaN;
      expect(number(byEvents(io, ic, eo, ec), name)).toBeCloseTo(wanted, 10);
    });
    expect(answer.assumptions.length).toBeGreaterThan(0);
  });

  test('from durations and centrelines, events with the sides the trade tells them from', () => {
    const [di, de, icl, ecl] = rest;
    const { result } = run(byCentrelines(di, icl, de, ecl));
    expect(result).toMatchObject({
      intakeOpens: { unit: 'deg', side: 'BTDC', value: expect.closeTo(io, 10) },
      intakeCloses: { unit: 'deg', side: 'ABDC', value: expect.closeTo(ic, 10) },
      exhaustOpens: { unit: 'deg', side: 'BBDC', value: expect.closeTo(eo, 10) },
      exhaustCloses: { unit: 'deg', side: 'ATDC', value: expect.closeTo(ec, 10) },
    });
  });
});

describe('single printed figures', () => {
  test('opens 6, closes 42: 228 of duration, centreline 108', () => {
    const given = byEvents(6, 42, 42, 12);
    expect(number(given, 'intakeDuration')).toBeCloseTo(228, 10);
    expect(number(given, 'intakeCentreline')).toBeCloseTo(108, 10);
    expect(number(given, 'overlap')).toBeCloseTo(18, 10);
  });
  test('264 of duration both with 45 of overlap: lobe separation 109.5', () => {
    expect(number(byCentrelines(264, 109.5, 264, 109.5), 'overlap')).toBeCloseTo(45, 10);
  });
  test('opens 10 ATDC, closes 39 ABDC: 209, centreline 114.5', () => {
    const given = { ...byEvents(0, 0, 40, 5), intake: { opens: '10 ATDC', closes: '39 deg ABDC' } };
    expect(number(given, 'intakeDuration')).toBeCloseTo(209, 10);
    expect(number(given, 'intakeCentreline')).toBeCloseTo(114.5, 10);
    expect(number(given, 'intakeOpens')).toBeCloseTo(-10, 10);
    expect(run(given).result).toMatchObject({ intakeOpens: { side: 'BTDC' } });
  });
});

describe('wrong formulas give other numbers', () => {
  const given = byEvents(31, 63, 77, 29);
  test('lobe separation in cam degrees is not the crank angle between the peaks', () => {
    expect(number(given, 'lobeSeparation')).not.toBeCloseTo(220, 1);
  });
  test('advance as centreline less lobe separation has the wrong sign', () => {
    expect(number(given, 'advance')).toBeGreaterThan(0);
  });
  test('exhaust centreline from its opening would give 66', () => {
    expect(number(given, 'exhaustCentreline')).not.toBeCloseTo(286 / 2 - 77, 1);
  });
});

const angle = fc.double({ min: -60, max: 110, noNaN: true });

test('events to centrelines and back, whichever side they are told from', () => {
  fc.assert(
    fc.property(angle, angle, angle, angle, (io, ic, eo, ec) => {
      const told = (value: number, side: string, other: string) =>
        value < 0 ? event(-value, other) : event(value, side);
      const one = {
        intake: { opens: told(io, 'BTDC', 'ATDC'), closes: told(ic, 'ABDC', 'BBDC') },
        exhaust: { opens: told(eo, 'BBDC', 'ABDC'), closes: told(ec, 'ATDC', 'BTDC') },
      };
      expectSame(run(one).result, run(byEvents(io, ic, eo, ec)).result);
      const at = (name: string) => number(one, name);
      const icl = at('intakeCentreline');
      const ecl = at('exhaustCentreline');
      if (icl < 0 || ecl < 0) return;
      const back = byCentrelines(at('intakeDuration'), icl, at('exhaustDuration'), ecl);
      expect(number(back, 'intakeOpens')).toBeCloseTo(io, 9);
      expect(number(back, 'intakeCloses')).toBeCloseTo(ic, 9);
      expect(number(back, 'exhaustOpens')).toBeCloseTo(eo, 9);
      expect(number(back, 'exhaustCloses')).toBeCloseTo(ec, 9);
      // Printed rule: half the sum of the durations less twice the lobe separation.
      const overlap = (at('intakeDuration') + at('exhaustDuration')) / 2 - 2 * at('lobeSeparation');
      expect(at('overlap')).toBeCloseTo(overlap, 9);
    }),
  );
});

test('moving the whole cam early by x adds x to advance and leaves separation and overlap', () => {
  fc.assert(
    fc.property(
      angle,
      angle,
      angle,
      angle,
      fc.double({ min: -20, max: 20, noNaN: true }),
      (io, ic, eo, ec, x) => {
        const before = byEvents(io, ic, eo, ec);
        const after = byEvents(io + x, ic - x, eo + x, ec - x);
        expect(number(after, 'advance') - number(before, 'advance')).toBeCloseTo(x, 9);
        expect(number(after, 'lobeSeparation')).toBeCloseTo(number(before, 'lobeSeparation'), 9);
        expect(number(after, 'overlap')).toBeCloseTo(number(before, 'overlap'), 9);
      },
    ),
  );
});

describe('input that can’t be', () => {
  const good = byEvents(31, 63, 77, 29);
  test('a misprint found in the trade: exhaust told to open BTDC and close ABDC', () => {
    const given = { ...good, exhaust: { opens: event(77, 'BTDC'), closes: event(29, 'ABDC') } };
    expect(refused(given)).toEqual(['/exhaust/opens/side not-allowed', '/exhaust/closes/side not-allowed']);
  });
  test('an event without a side, without a unit, as a bare number', () => {
    const exhaust = { opens: deg(77), closes: { value: 29, side: 'ATDC' } };
    expect(refused({ intake: { opens: 31, closes: '63 ABDC' }, exhaust })).toEqual([
      '/intake/opens wrong-dimension',
      '/exhaust/opens/side required',
      '/exhaust/closes/unit required',
    ]);
  });
  test('half a form, both forms, none', () => {
    expect(refused({ intake: { opens: event(31, 'BTDC') }, exhaust: { centreline: deg(110) } })).toEqual([
      '/intake/closes required',
      '/exhaust/duration required',
    ]);
    expect(refused({ ...good, intake: { ...good.intake, duration: deg(274) } })).toEqual([
      '/intake/duration not-allowed',
    ]);
    expect(refused({ ...good, intake: {} })).toEqual(['/intake/opens required', '/intake/closes required']);
    expect(refused({})).toEqual(['/intake required', '/exhaust required']);
  });
  test('closes before it opens, over 720°, a negative centreline', () => {
    expect(refused({ ...good, intake: { opens: event(100, 'ATDC'), closes: event(80, 'BBDC') } })).toEqual([
      '/intake/opens impossible-input',
      '/intake/closes impossible-input',
    ]);
    expect(refused(byCentrelines(721, 100, 230, 361))).toEqual([
      '/intake/duration impossible-input',
      '/exhaust/centreline impossible-input',
    ]);
    expect(refused(byCentrelines(230, -106, 236, 114))).toEqual(['/intake/centreline out-of-range']);
    expect(refused(byCentrelines(0, 106, 236, 114))).toEqual(['/intake/duration out-of-range']);
    expect(refused({ ...good, intake: { duration: inches(3), centreline: deg(110) } })).toEqual([
      '/intake/duration wrong-dimension',
    ]);
  });
  test('under fire', () => {
    expectSoundUnderFire(computation, good);
    for (const opens of [null, 'x BTDC', '1e999 BTDC', event(1e308, 'BTDC'), event(360, 'BTDC'), [], {}]) {
      expect(() =>
        expectNear(number({ ...good, intake: { ...good.intake, opens } }, 'advance'), 0),
      ).toThrow();
    }
  }, 30_000);
});

test('the worked example', () => {
  expectSame(run(registered.example.inputs).result, registered.example.result);
});
