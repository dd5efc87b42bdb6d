import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { SetEvidence } from '../../../server/mechanics/assessment/evidence/kept-sums.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { GEAR_PLANS } from '../../../server/mechanics/assessment/gear/plans.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { keysOf, VALVE_GEARS } from '../../../shared/schemas/words.ts';
import { line } from './lash-log.ts';
import { PLAIN } from './plain-build.ts';

/* A kept sum beside the build that it was made for. Which gear has which parts: general knowledge, from memory. */

const build = (set: SetEvidence, more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'adjuster' },
  ...more,
  workings: [{ id: 'sum', computation: set.of, line: 20, set }],
});
const doubts = (set: SetEvidence, more: Partial<Evidence> = {}): string[] =>
  assess(build(set, more)).questions.flatMap(({ code, size = '' }) =>
    code === 'sum-unlikely' ? [size] : [],
  );

const thread = { thread: '7/16-20', size: '7/16', pitch: 0.05 * IN, mount: 'cup-screw', ratio: 1.6 } as const;
const SUMS = {
  'stand-height': { of: 'stand', netLift: 0.56 * IN, pivotToTip: 1.48 * IN, shim: 0.1 * IN },
  'lash-hot-cold': { of: 'heat', ratio: 1.6, hot: 0.016 * IN, cold: 0.012 * IN },
  'lifter-preload': {
    of: 'preload',
    ...thread,
    turns: 0.5,
    preload: 0.025 * IN,
    inBand: 'within',
    from: 0.02 * IN,
    to: 0.06 * IN,
    wanted: false,
  },
  adjuster: { of: 'turns', ...thread, turns: 0.1, lifter: 'solid' },
  'pushrod-length': { of: 'pushrod', length: 7.85 * IN, told: 'overall' },
  'follower-ratio': { of: 'follower', shut: { ratio: 1.6, low: 1.58, high: 1.62 } },
} as const satisfies Readonly<Record<string, SetEvidence>>;

describe('a sum that this valve gear has no use for is doubted, and one that it has is not', () => {
  for (const gear of keysOf(VALVE_GEARS))
    test.each(Object.entries<SetEvidence>(SUMS))(`${gear}: %s`, (name, sum) => {
      const engine = { ...PLAIN.engine, mounting: 'shaft', gear } as const;
      const isNone = GEAR_PLANS[gear].parts.includes(name);
      const named = VALVE_GEARS[gear].toLowerCase();
      const said = doubts(sum, { engine }).filter((size) => size.includes(named));
      expect(said).toHaveLength(isNone ? 1 : 0);
    });

  test('the valve gear was put right after a stand’s height was kept: nobody is told to raise it', () => {
    const engine = { ...PLAIN.engine, mounting: 'shaft', gear: 'finger-follower' } as const;
    const said = assess(build(SUMS['stand-height'], { engine }));
    expect(said.headlines.map(({ sentence }) => sentence).join(' ')).not.toMatch(/raise the stand/);
    expect(doubts(SUMS['stand-height'], { engine })[0]).toMatch(/there is no stand\.$/);
  });
});

describe('a lash that was taken off at the pushrod', () => {
  const card = { ...PLAIN.card, intake: { lobeLift: 0.35 * IN, lash: 0.024 * IN } };
  const rockers = { soldAs: 1.5, planned: 1.6, pivotToTip: 1.48 * IN };
  const less = (inches: number): SetEvidence => ({
    ...SUMS['pushrod-length'],
    lashOff: true,
    less: inches * IN,
  });

  // .024 / 1.6 = .015, .024 / 1.5 = .016 and .024 / 1.7 = .0141; .0120 × 1.6 = .0192.
  test.each([
    ['with the planned arms', { card, rockers }, 0.015],
    ['with those that they are sold as', { card, rockers }, 0.016],
    ['with those planned for the exhaust', { card, rockers: { ...rockers, plannedExhaust: 1.7 } }, 0.0141],
  ] as const)('%s it is the card’s', (_, more, taken) => {
    expect(doubts(less(taken), more)).toEqual([]);
  });

  test('with none of them it is another lash', () => {
    expect(doubts(less(0.012), { card, rockers })).toEqual([
      'The card’s lash is .024 in; the sum took .012 in at the pushrod, .018 in or .019 in at the valve off.',
    ]);
  });
});

describe('the gap that a sum hot and cold was made from', () => {
  const heat: SetEvidence = { ...SUMS['lash-hot-cold'], found: { cold: 0.012 * IN, hot: 0.016 * IN } };
  const sizes = (lash: Evidence['lash']) => doubts(heat, { lash });

  test('of gaps whose heat nobody said it is not said that they were found cold', () => {
    const unsaid = line(1, '2026-01-10', 0.02, { engine: 'not-said' });
    expect(sizes([unsaid])[0]).toMatch(
      /^The log has \.020 in found with the heat not said; the sum was made/,
    );
    expect(sizes([unsaid, line(2, '2026-01-10', 0.022, { cylinder: 4 })])[0]).toMatch(
      /^The log has \.022 in found cold and \.020 in found with the heat not said; the sum/,
    );
    expect(sizes([line(1, '2026-01-10', 0.02)])[0]).toMatch(/^The log has \.020 in found cold; the sum/);
    expect(sizes([line(1, '2026-01-10', 0.02, { engine: 'hot' })])).toEqual([]);
  });

  test('set again before the sum was kept, what was found before that is not the gap of the sum', () => {
    const before = [line(1, '2026-01-10', 0.012), line(2, '2026-01-10', 0.02, { moment: 'set' })];
    expect(sizes([...before, line(3, '2026-01-12', 0.02)])).toHaveLength(1);
    // Set since the sum was kept, as it is meant: the gap is the one that it was made from.
    const since = line(22, '2026-01-10', 0.02, { moment: 'set' });
    expect(sizes([line(1, '2026-01-10', 0.012), since, line(23, '2026-01-12', 0.02)])).toEqual([]);
  });
});
