import { describe, expect, test } from 'vitest';
import type { Evidence, LashEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { about, answering, line, log, toldOf } from './lash-log.ts';

/* The card asks for .020 intake and .022 exhaust, hot; a gap within a feeler of it stays: common practice, no source. */
const card = {
  assumedRatio: 1.5,
  lashAt: 'hot',
  intake: { lobeLift: 0.3 * IN, lash: 0.02 * IN },
  exhaust: { lobeLift: 0.305 * IN, lash: 0.022 * IN },
} as const;
const hot = { engine: 'hot' } as const;
const of = (lash: readonly LashEvidence[], goal: Evidence['call']['goal'] = 'adjuster'): Evidence => ({
  ...about(log(lash), goal),
  card,
});
const intake = (number: number, gap: number, more: Partial<LashEvidence> = {}) =>
  line(number, `2026-03-${10 + number}`, gap, { valve: 'intake', ...more });
const between = (low: number, high: number): Partial<LashEvidence> => ({
  gap: { low: low * IN, high: high * IN },
});

describe('a gap that was found beside what the card asks for', () => {
  test('is told by how much it is tight or wide, and its valve is named for the turn', () => {
    // .022 − .0118 = .0102; .030 − .020 = .010.
    const tight = toldOf(of([line(1, '2026-03-10', 0.0118, hot)]));
    expect(tight.told).toMatch(
      /^3 exhaust: found at \.012 in hot, the card asks for \.022 in: \.010 in tight\./m,
    );
    expect(tight.next?.sentence).toBe('Give thread and turns of the adjuster of 3 exhaust.');
    expect(toldOf(of([intake(1, 0.03, hot)])).told).toMatch(/\.010 in wide/);
  });

  test('where one valve is not like the others it is told as well', () => {
    expect(toldOf(of([line(1, '2026-03-10', 0.031, hot)], 'one-valve-differs')).told).toMatch(
      /the card asks for \.022 in: \.009 in wide/,
    );
  });

  test('at the other heat nothing is told of it', () => {
    expect(toldOf(of([intake(1, 0.03)])).told).not.toMatch(/wide|tight/);
  });

  test('between two feelers that are both as near as is left it is as the card asks', () => {
    const { told, next } = toldOf(of([intake(1, 0.02, { ...hot, ...between(0.019, 0.021) })]));
    expect(told).toMatch(/^Found as the card asks/m);
    expect(next?.sentence).not.toMatch(/thread and turns/);
    expect(toldOf(of([intake(1, 0.02, { ...hot, ...between(0.024, 0.026) })])).told).toMatch(
      /\.004 to \.006 in wide/,
    );
  });
});

describe('set cold, and read hot as was asked', () => {
  const set = intake(1, 0.016, { moment: 'set' });
  test('is asked to be read hot, and is then set against the card', () => {
    expect(toldOf(of([set])).next?.sentence).toMatch(
      /^Read the gap of 3 intake again, locked and hot, as the card’s lash is for/,
    );
    // .021 against .020: within a feeler.
    const read = toldOf(of([set, intake(2, 0.021, hot)]));
    expect(read.codes).not.toContain('lash-heat-differs');
    expect(read.codes).not.toContain('lash-unusual');
    expect(read.told).toMatch(/^Found as the card asks, with no turn needed: 3 intake \.021 in\./m);
    expect(toldOf(of([set, intake(2, 0.027, hot)])).told).toMatch(/\.007 in wide/);
  });

  test('with the metals worked out it is set against what they make of the card', () => {
    // .020 hot is .010 cold by these metals: .016 cold is .026 hot.
    const workings = [
      {
        id: 'heat',
        computation: 'lash-hot-cold',
        line: 5,
        set: { of: 'heat', ratio: 1.5, hot: 0.02 * IN, cold: 0.01 * IN },
      },
    ] as const;
    const { asked, next } = toldOf({ ...of([set]), workings });
    expect(asked('lash-unusual')?.size).toMatch(
      /by the metals \.020 in hot is about \.010 in cold, so this becomes about \.026 in hot/,
    );
    expect(next?.sentence).not.toMatch(/locked and hot/);
  });
});

/** A turn of a 3/8-24 nut that is kept, worked out from one gap to another, in inches. */
const turned = (turns: number, found: number, wanted: number): Evidence['workings'] => [
  {
    id: 'turns',
    computation: 'adjuster',
    line: 20,
    set: {
      of: 'turns',
      thread: '3/8-24',
      size: '3/8',
      pitch: IN / 24,
      mount: 'stud-nut',
      ratio: 1.6,
      turns,
      lifter: 'solid',
      lashFound: found * IN,
      lashWanted: wanted * IN,
    },
  },
];

describe('a turn that was worked out from a gap between two feelers', () => {
  const workings = turned(0.05, 0.027, 0.022);
  const exhaust = line(1, '2026-03-10', 0.027, { cylinder: 1, ...hot, ...between(0.026, 0.028) });
  test('is told of the one valve whose feelers hold it', () => {
    const one = toldOf({ ...of([exhaust, intake(2, 0.0195, hot)]), workings });
    expect(one.codes).not.toContain('sum-against-log');
    expect(one.told).toMatch(/^1 exhaust: tighten/m);
  });

  test('of two such valves nobody can tell which is meant', () => {
    const other = line(3, '2026-03-10', 0.027, { cylinder: 5, ...hot, ...between(0.025, 0.028) });
    expect(toldOf({ ...of([exhaust, other]), workings }).told).not.toMatch(/exhaust: tighten/);
  });
});

describe('the lashes of the two sides the wrong way round', () => {
  const swapped = of([intake(1, 0.022, hot), line(2, '2026-03-12', 0.02, hot)]);
  const wide = { ...swapped, card: { ...card, exhaust: { ...card.exhaust, lash: 0.026 * IN } } };
  const both: Evidence = { ...wide, lash: [intake(1, 0.026, hot), line(2, '2026-03-12', 0.02, hot)] };
  const turn = (evidence: Evidence): Evidence => ({ ...evidence, workings: turned(0.06, 0.026, 0.02) });

  test.each([undefined, 'entered-so', 'card'])('%s: nothing is turned by them before', (answer) => {
    const asked = turn(both);
    const { told, details } = toldOf(
      answer === undefined ? asked : answering(asked, 'lash-sides-swapped', answer),
    );
    expect(told).toMatch(/Nothing is told of these turns yet/);
    expect(told).not.toMatch(/tighten/);
    expect(details.workings.turnToMake).toBeUndefined();
  });

  test('what was entered so is put right in the log next', () => {
    const { next } = toldOf(answering(both, 'lash-sides-swapped', 'entered-so'));
    expect(next?.sentence).toBe('Put the lashes of intake and exhaust right in the log.');
  });

  test('set so, each is turned to its own', () => {
    const { told, details } = toldOf(answering(turn(both), 'lash-sides-swapped', 'set-so'));
    expect(told).toMatch(/3 intake: tighten/);
    expect(details.workings.turnToMake).toBe('turns');
  });
});

describe('a gap of which its gauges, its heat or the card leave something open', () => {
  const ends = (gap: { low?: number; high?: number }): Partial<LashEvidence> => ({
    gap: Object.fromEntries(Object.entries(gap).map(([end, each]) => [end, each * IN])),
    ...hot,
  });

  test('known from one side it is tight or wide by so much at the least', () => {
    // .040 − .020 = .020; .022 − .010 = .012.
    expect(toldOf(of([intake(1, 0, ends({ low: 0.04 }))])).told).toMatch(
      /3 intake: found at more than \.040 in hot, the card asks for \.020 in: at least \.020 in wide\./,
    );
    expect(toldOf(of([line(1, '2026-03-10', 0, ends({ high: 0.01 }))])).told).toMatch(
      /found at less than \.010 in hot, the card asks for \.022 in: at least \.012 in tight/,
    );
  });

  test('that the thinnest leaf does not go into may be none', () => {
    const { told, stops, next } = toldOf(of([line(1, '2026-03-10', 0, ends({ high: 0.0015 }))]));
    expect(told).toMatch(/No gap at 3 exhaust/);
    expect(stops).toMatch(/Do not run it: 3 exhaust has no gap/);
    expect(next?.sentence).toMatch(/back its adjuster off with the engine left still/);
    expect(toldOf(of([line(1, '2026-03-10', 0.0015, hot)])).stops).toBe('');
  });

  test('on both sides of what is asked for it is read with a leaf between, before any turn', () => {
    const { told, next } = toldOf(of([intake(1, 0, ends({ low: 0.019, high: 0.022 }))]));
    expect(told).toMatch(
      /whether it is tight or wide can’t be told by these gauges, a leaf between them tells/,
    );
    expect(next?.sentence).toMatch(/^Read the gap of 3 intake again with a leaf between/);
  });

  test('whose heat nobody said, or that is not the card’s, is asked for that before any turn', () => {
    const next = (evidence: Evidence) => toldOf(evidence).next?.sentence ?? '';
    expect(next(of([intake(1, 0.027, { engine: 'not-said' })]))).toMatch(
      /^Ask whether the gap of 3 intake was read hot or cold/,
    );
    expect(next(of([intake(1, 0.027)]))).toMatch(
      /^Read the gap of 3 intake again hot, as the card’s lash is for/,
    );
    const { lashAt: _, ...unsaid } = card;
    expect(next({ ...of([intake(1, 0.027)]), card: unsaid })).toMatch(
      /^Ask whether the lash on the card is for a hot or a cold engine/,
    );
    expect(next({ ...of([intake(1, 0.027)]), card: { intake: {}, exhaust: {} } })).toMatch(
      /which lash the cam’s maker asks for, hot or cold: the card on record has none/,
    );
  });
});
