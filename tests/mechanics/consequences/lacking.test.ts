import { describe, expect, test } from 'vitest';
import { figureRows } from '../../../server/mechanics/consequences/figure-rows.ts';
import { attempt, known } from '../../../server/mechanics/consequences/gap-calculation.ts';
import { gapAfterOf, gapBeforeOf, gapRow } from '../../../server/mechanics/consequences/gap-row.ts';
import { movedScan } from '../../../server/mechanics/consequences/piston-gap.ts';
import type { ConsequenceInput, FigureRow } from '../../../server/mechanics/consequences/types.ts';
import { DEG, IN } from '../../../server/mechanics/kit/si.ts';
import { InputFaults, impossible } from '../../../shared/problems/faults.ts';
import { CASE, LIMITS } from './case.ts';

const NOTHING: ConsequenceInput = {
  side: 'exhaust',
  spring: {},
  crank: {},
  lobe: {},
  readBefore: {},
  limits: LIMITS,
};
const figure = (input: ConsequenceInput, name: FigureRow['name']) =>
  figureRows(input).find((row) => row.name === name);
const lacks = (input: ConsequenceInput, name: FigureRow['name']) => figure(input, name)?.missing;
const CARD = 'ratio the card assumes';
const MEASURED = 'a ratio to calculate with';

describe('what a figure lacks is named once, the ratios first', () => {
  test('with nothing known', () => {
    expect(lacks(NOTHING, 'gross-lift')).toEqual([CARD, MEASURED, 'lobe lift']);
    expect(lacks(NOTHING, 'cup-move')).toEqual([CARD, MEASURED, 'pivot to tip']);
    expect(lacks(NOTHING, 'open-load')).toEqual([
      CARD,
      MEASURED,
      'lobe lift',
      'installed height',
      'seat load',
      'spring rate',
    ]);
  });

  test('one ratio gives its own side', () => {
    const { before: _before, ...noCard } = CASE;
    expect(lacks(noCard, 'net-lift')).toEqual([CARD]);
    expect(figure(noCard, 'net-lift')).not.toHaveProperty('before');
    expect((figure(noCard, 'net-lift')?.after ?? 0) / IN).toBeCloseTo(0.5, 12);
    expect(lacks(noCard, 'cup-move')).toEqual([CARD]);
    const { after: _after, ...unmeasured } = CASE;
    expect(lacks(unmeasured, 'net-lift')).toEqual([MEASURED]);
    expect(figure(unmeasured, 'net-lift')).not.toHaveProperty('after');
  });

  test('a lash is not lacking where the lifter has none, or the lift was read with it', () => {
    const { lash: _lash, ...noLash } = CASE;
    expect(lacks({ ...noLash, lifter: 'hydraulic' }, 'net-lift')).toEqual([]);
    const carried = { value: 1.55, halfWidth: 0.01, lashIn: true } as const;
    const both = { ...noLash, before: carried, after: { ...carried, spring: 'light' } } as const;
    expect(lacks(both, 'net-lift')).toEqual([]);
    const clean = { ...carried, lashIn: false };
    expect(lacks({ ...both, before: clean }, 'net-lift')).toEqual(['lash']);
  });

  test('a stud has a nut, other pivots do not', () => {
    expect(figure(CASE, 'pivot-load')?.title).toBe('Stud and nut load, open');
    expect(figure({ ...CASE, mounting: 'shaft' }, 'pivot-load')?.title).toBe(
      'Load on the rocker’s pivot, open',
    );
  });
});

describe('what a gap lacks', () => {
  const missing = (input: ConsequenceInput, name: keyof typeof LIMITS) => gapRow(input, name).missing;

  test('with nothing known: of a calculated one all it takes, of a measured one the measuring', () => {
    expect(missing(NOTHING, 'coil-bind')).toEqual([
      MEASURED,
      'lobe lift',
      'installed height',
      'coil-bind height',
    ]);
    expect(missing(NOTHING, 'cover')).toEqual(['a measured gap']);
    expect(gapAfterOf(NOTHING, 'cover')).toBeUndefined();
    expect(gapBeforeOf(NOTHING, 'coil-bind')).toBeUndefined();
    const { before: _before, ...noCard } = CASE;
    expect(gapBeforeOf(noCard, 'coil-bind')).toBeUndefined();
  });

  test('of one that was read, what the change takes alone', () => {
    const gap = { value: 0.1 * IN };
    const read = {
      'coil-bind': gap,
      'retainer-to-seal': gap,
      'pushrod-to-head': gap,
      'piston-to-valve': gap,
    };
    const only: ConsequenceInput = { ...NOTHING, readBefore: read };
    for (const name of ['coil-bind', 'retainer-to-seal', 'piston-to-valve'] as const) {
      expect(missing(only, name), name).toEqual([MEASURED, CARD, 'lobe lift']);
    }
    expect(missing(only, 'pushrod-to-head')).toEqual([MEASURED, CARD, 'pivot to tip']);
    const { before: _before, ...noCard } = CASE;
    expect(missing({ ...noCard, readBefore: read }, 'coil-bind')).toEqual([CARD]);
    expect(missing(noCard, 'coil-bind')).toEqual([]);
  });

  test('figures that do not fit together say why', () => {
    const short = { ...CASE, spring: { ...CASE.spring, installedHeight: 0.4 * IN } };
    expect(missing(short, 'coil-bind')).toHaveLength(1);
    expect(missing(short, 'coil-bind')[0]).toMatch(/^figures that fit together: ./);
  });

  test('a gap bounded on one side is moved on that side', () => {
    const by = 0.3125 * 0.1;
    const half = 0.3125 * Math.hypot(0.03, 0.006);
    const moved = (gap: object) =>
      gapRow({ ...CASE, readBefore: { 'coil-bind': gap } }, 'coil-bind').after ?? {};
    const low = moved({ low: 0.2 * IN });
    expect(Object.keys(low).toSorted()).toEqual(['basis', 'low']);
    expect(low).toMatchObject({ low: expect.closeTo((0.2 - by - half) * IN, 12) });
    const high = moved({ high: 0.2 * IN });
    expect(Object.keys(high).toSorted()).toEqual(['basis', 'high']);
    expect(high).toMatchObject({ high: expect.closeTo((0.2 - by + half) * IN, 12) });
  });
});

describe('a scan that was read before', () => {
  const scanBefore = {
    stations: [4, 6, 8, 10, 12].map((degree) => ({
      crankAngle: degree * DEG,
      gap: (0.12 + 0.0005 * (degree - 8) ** 2) * IN,
    })),
    error: 0,
    lash: 0,
  };
  const scanned: ConsequenceInput = { ...CASE, scanBefore };

  test('is moved where the card gives a lobe and both ratios are known; else there is none', () => {
    expect(movedScan(scanned)?.after.least).toBeLessThan(0.12 * IN);
    const { lobeLift: _lobe, ...noLobe } = scanned;
    const { before: _before, ...noCard } = scanned;
    const { after: _after, ...noRatio } = scanned;
    for (const input of [noLobe, noCard, noRatio, { ...scanned, lobe: {} }, CASE]) {
      expect(movedScan(input)).toBeUndefined();
    }
    for (const lobe of [{ centreline: 106 * DEG }, { durations: CASE.lobe.durations ?? [] }]) {
      expect(movedScan({ ...scanned, lobe })).toBeUndefined();
    }
  });

  test('without a lobe over the crank, the lobe’s lift there tells the change: .140 × .1', () => {
    const { lobeLift: _lobe, ...noLobe } = scanned;
    const read = { 'piston-to-valve': { value: 0.12 * IN } };
    const { after } = gapRow(
      { ...noLobe, readBefore: read, lobeLiftAtClosest: 0.14 * IN },
      'piston-to-valve',
    );
    expect((after?.value ?? 0) / IN).toBeCloseTo(0.106, 12);
  });
});

describe('a calculation that can’t be', () => {
  test('tells each fault once, and hides no other error', () => {
    expect(attempt(() => impossible(['a', 'b'], 'is too long'))).toEqual({ ok: false, why: 'is too long' });
    const fault = (detail: string) => ({ pointer: '/a', code: 'impossible-input' as const, detail });
    expect(
      attempt(() => {
        throw new InputFaults([fault('is long'), fault('is thin'), fault('is long')]);
      }),
    ).toEqual({ ok: false, why: 'is long; is thin' });
    const broken = () => {
      throw new TypeError('broken');
    };
    expect(() => attempt(broken)).toThrow(TypeError);
    expect(attempt(() => 3)).toEqual({ ok: true, value: 3 });
  });

  test('asked before its inputs are there it says which', () => {
    expect(() => known(undefined, 'rate')).toThrow('rate is not known');
    expect(known(0, 'rate')).toBe(0);
  });
});
