import { describe, expect, test } from 'vitest';
import type { Evidence, LashEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { geared, MM } from './geared.ts';
import { about, answering, line, log, toldOf } from './lash-log.ts';

/* How each valve gear is made: general knowledge, from memory. A shim stands in the gap with its whole thickness. */
const metric = (number: number, gap: LashEvidence['gap'], more: Partial<LashEvidence> = {}): LashEvidence =>
  line(number, `2026-03-${10 + number}`, 0, {
    valve: 'intake',
    cylinder: 1,
    nut: 'not-looked',
    gap,
    ...more,
  });
const mm = (value: number) => ({ value: value * MM });
const card = { lashAt: 'cold', intake: { lash: 0.15 * MM }, exhaust: { lash: 0.3 * MM } } as const;
const follower = (lash: readonly LashEvidence[], engine: Partial<Evidence['engine']> = {}): Evidence => {
  const base = geared('finger-follower', { lash, card });
  return about({ ...base, engine: { ...base.engine, ...engine } });
};
const bucket = (lash: readonly LashEvidence[], more: Partial<Evidence> = {}): Evidence => {
  const base = geared('bucket', { lash, card, ...more });
  const stock = [2.4, 2.45, 2.5, 2.55, 2.6].map((each) => each * MM);
  return about({ ...base, engine: { ...base.engine, shimStock: stock } });
};

describe('a solid finger follower', () => {
  test('with a shim over its stem has its shim worked out', () => {
    // 1.80 + .10 − .15 = 1.75.
    const set = follower([metric(1, mm(0.1), { shim: 1.8 * MM })], {
      shimStock: [1.7, 1.75, 1.8].map((each) => each * MM),
    });
    const { told, details, next } = toldOf(set);
    expect(told).toMatch(/^Shims to fit: 1 intake 1\.75 mm\./m);
    expect(details.gear.parts).not.toContain('shims');
    expect(next?.sentence).not.toMatch(/turns of the adjuster/);
  });

  test('with none on record it is told how far its gap is off', () => {
    expect(toldOf(follower([metric(1, mm(0.1))])).told).toMatch(
      /1 intake: found at .* tight\. It is set by the screw at its pivot, in small steps .* the engine maker’s way goes first/,
    );
  });
});

describe('a gap at a hydraulic part', () => {
  const found = [metric(1, mm(0.1))];
  test.each([
    ['pressed-down', /plunger travel and no lash, and no turn sets it/],
    ['pumped-up', /the pivot was full, and should have taken that up/],
  ])('of a follower’s pivot %s sends nobody to count turns', (answer, said) => {
    const hydraulic = follower(found, { lifter: 'hydraulic-flat' });
    const { told, asked } = toldOf(answering(hydraulic, 'gap-on-hydraulic', answer));
    expect(told).toMatch(said);
    expect(told).not.toMatch(/in turns from zero|adjuster is out/);
    expect(asked('gap-on-hydraulic')?.ask).toMatch(/^How did the pivot of 1 intake stand/);
  });

  test('of a lifter under a pushrod it is counted in turns, as before', () => {
    const lifter: Evidence = {
      ...about(log([line(1, '2026-03-10', 0.004)])),
      engine: { cylinders: 8, lifter: 'hydraulic-flat', mounting: 'stud' },
    };
    expect(toldOf(answering(lifter, 'gap-on-hydraulic', 'pressed-down')).told).toMatch(
      /What counts is its preload, in turns from zero lash/,
    );
  });
});

describe('a bucket', () => {
  const between = { low: 0.33 * MM, high: 0.36 * MM };
  const exhaust = metric(1, between, { cylinder: 2, valve: 'exhaust', shim: 2.4 * MM });
  test('found between two feelers has the shim that is right for both', () => {
    // 2.40 + .33 … .36 − .30 = 2.43 to 2.46; 2.45 leaves .28 to .31.
    const { told, details } = toldOf(bucket([exhaust]));
    expect(told).toMatch(/^Shims to fit: 2 exhaust 2\.45 mm\./m);
    expect(details.lash.shims.rows[0]?.sentence).toBe(
      '2 exhaust: 0.33 to 0.36 mm found, 0.30 mm wanted: too wide. 2.45 mm from stock goes in for its 2.40 mm, which leaves 0.28 to 0.31 mm.',
    );
  });

  test('between two that leave more open than may stay lacks a closer reading', () => {
    const wide = { ...exhaust, gap: { low: 0.3 * MM, high: 0.4 * MM } };
    expect(toldOf(bucket([wide])).told).toMatch(/First: the gap as one figure, or between closer feelers/);
  });

  test('while the heat of the card is not said no shim is told on any face', () => {
    const [row] = toldOf(bucket([exhaust], { card: { intake: card.intake, exhaust: card.exhaust } })).details
      .lash.shims.rows;
    expect(row?.lacks.map(({ code }) => code)).toEqual(['heat-of-card']);
    expect([row?.shim, row?.toHave, row?.choice]).toEqual([undefined, undefined, undefined]);
  });

  test('whose gap closed at one heat has no lock to ask after: it is the seat', () => {
    const set = metric(1, mm(0.3), { moment: 'set', shim: 2.4 * MM });
    const { codes, told } = toldOf(bucket([set, metric(2, mm(0.15), { shim: 2.4 * MM })]));
    expect(codes).not.toContain('lash-closed-nut');
    expect(told).toMatch(/may be sinking into its seat/);
  });

  test('with a lash that hardly can be no nut backed off', () => {
    const { asked } = toldOf(bucket([metric(1, mm(2.2), { readAs: '2.2 mm' })]));
    expect(asked('lash-unlikely')?.size).toMatch(
      /^So wide a gap is hardly ever set, and so wide a gap is heard/,
    );
  });
});

describe('a lash that is doubted', () => {
  const set = line(1, '2026-01-10', 0.022, { moment: 'set' });
  const slip = line(2, '2026-02-10', 0.3);
  const doubted = about(log([set, slip]));
  test('tells no growth, neither while it is asked nor once it was entered wrong', () => {
    expect(toldOf(doubted).codes).toContain('lash-unlikely');
    for (const each of [doubted, answering(doubted, 'lash-unlikely', 'found')]) {
      const { codes, told } = toldOf(each);
      expect(codes.filter((code) => code === 'lash-grew' || code.startsWith('noise-'))).toEqual([]);
      expect(told).not.toMatch(/It grew/);
    }
    expect(toldOf(answering(doubted, 'lash-unlikely', 'not-found')).told).toMatch(/It grew by \.278 in/);
  });
});

describe('a valve that may be sinking into its seat', () => {
  const closed = about(
    log([
      line(1, '2026-01-10', 0.02, { moment: 'set' }),
      line(2, '2026-02-10', 0.011, { nut: 'not-looked' }),
    ]),
  );
  test('is sent to be set by nobody, whatever its adjuster is called', () => {
    const { told, next } = toldOf(answering(closed, 'lash-closed-nut', 'held'));
    expect(told).toMatch(/Do not set it away/);
    expect(next?.sentence).not.toMatch(/thread and turns/);
  });

  test('stays so when the mounting is said later', () => {
    const unsaid: Evidence = { ...closed, engine: { cylinders: 8, lifter: 'solid-flat' } };
    const held = answering(unsaid, 'lash-closed-nut', 'held');
    const later: Evidence = { ...held, engine: { ...held.engine, mounting: 'stud' } };
    expect(toldOf(later).codes).not.toContain('lash-closed-nut');
    expect(toldOf(later).told).toMatch(/Do not set it away/);
  });
});

describe('what gauges leave open', () => {
  const between = (low: number | undefined, high: number | undefined) => ({
    ...(low === undefined ? {} : { low: low * IN }),
    ...(high === undefined ? {} : { high: high * IN }),
  });
  test('set over a gauge with none above it is not called held, nor changed by what is ordinary', () => {
    const open = line(1, '2026-01-10', 0, { moment: 'set', gap: between(0.01, undefined) });
    const { told } = toldOf(about(log([open, line(2, '2026-02-10', 0.012)])));
    expect(told).not.toMatch(/no more than is ordinary|read again since/);
  });

  test('a gap that may have closed as well as grown is told as both', () => {
    const wide = between(0.014, 0.026);
    const set = line(1, '2026-01-10', 0, { moment: 'set', gap: wide });
    const { told } = toldOf(about(log([set, line(2, '2026-02-10', 0, { gap: wide })])));
    expect(told).toMatch(/It may have closed by up to \.012 in or grown by up to \.012 in/);
  });

  test('heats that nobody said are not one heat', () => {
    const unsaid = { engine: 'not-said' } as const;
    const set = line(1, '2026-01-10', 0.02, { moment: 'set', ...unsaid });
    const { told } = toldOf(about(log([set, line(2, '2026-02-10', 0.02, unsaid)])));
    expect(told).not.toMatch(/read again since/);
  });
});

test('while it is open how a hydraulic lifter stood, nothing is told of what its gap did, and that is asked next', () => {
  const base = about(log([]), 'noise-or-failure');
  const evidence: Evidence = {
    ...base,
    engine: { ...base.engine, mounting: 'pedestal', lifter: 'hydraulic-flat' },
    call: { ...base.call, engineState: 'has-run' },
    answers: [
      { id: 'a1', line: 50, code: 'noise-signs', question: '', answer: 'none' },
      { id: 'a2', line: 51, code: 'noise-which', question: '', answer: 'one: 3 exhaust' },
    ],
    lash: [line(1, '2026-10-01', 0.008, { moment: 'set' }), line(2, '2026-10-20', 0.016)],
  };
  const { codes, next } = toldOf(evidence);
  expect(codes).toContain('gap-on-hydraulic');
  expect(codes).not.toContain('lash-grew');
  expect(next?.action).toBe('gap-on-hydraulic');
});

test('a lash that was set answers whether a cam rocker’s lash is set', () => {
  const rocker = (lash: readonly LashEvidence[]): Evidence => {
    const base = about(geared('cam-rocker', { lash }), 'noise-or-failure');
    const { lifter: _, ...engine } = base.engine;
    return { ...base, engine };
  };
  const needs = (evidence: Evidence) => toldOf(evidence).details.noise.known;
  expect(needs(rocker([]))).not.toContain('lifter');
  expect(needs(rocker([metric(1, mm(0.2), { moment: 'set' })]))).toContain('lifter');
});
