import { describe, expect, test } from 'vitest';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { oddOfSwap } from '../../../server/mechanics/valve-sheet/swap-odd.ts';
import { type ArmOnValve, swapTests } from '../../../server/mechanics/valve-sheet/swap-test.ts';

const read = (arm: string, place: string, lift: number): ArmOnValve => ({ arm, place, lift: lift * IN });

/** An independent model: lift = .560 + what the arm adds + what the place adds. */
const modelled = (arm: Record<string, number>, place: Record<string, number>): ArmOnValve[] =>
  Object.entries(arm).flatMap(([a, ofArm]) =>
    Object.entries(place).map(([p, ofPlace]) => read(a, p, 0.56 + ofArm + ofPlace)),
  );

describe('swap test', () => {
  test('a difference that follows the arm is the part', () => {
    const [outcome] = swapTests(modelled({ A: -0.02, B: 0 }, { '5 intake': 0, '3 intake': 0.001 }));
    expect(outcome?.verdict).toBe('part');
    expect((outcome?.part ?? 0) / IN).toBeCloseTo(-0.02, 12);
    expect((outcome?.position ?? 0) / IN).toBeCloseTo(-0.001, 12);
  });

  test('one that stays is the position', () => {
    const [outcome] = swapTests(modelled({ A: 0.001, B: 0 }, { '5 intake': -0.018, '3 intake': 0 }));
    expect(outcome?.verdict).toBe('position');
    expect((outcome?.position ?? 0) / IN).toBeCloseTo(-0.018, 12);
  });

  test('both; also where each by itself is too small to make a valve odd, and the two together are not', () => {
    expect(swapTests(modelled({ A: -0.02, B: 0 }, { P: -0.02, Q: 0 }))[0]?.verdict).toBe('both');
    expect(swapTests(modelled({ A: -0.006, B: 0 }, { P: -0.006, Q: 0 }))[0]?.verdict).toBe('both');
  });

  test('nothing differs by what counts, .008 in, common practice: it cannot be told', () => {
    const [outcome] = swapTests(modelled({ A: -0.004, B: 0 }, { P: 0.003, Q: 0 }));
    expect([outcome?.verdict, outcome?.because]).toEqual(['cannot-tell', 'small']);
  });

  test('a difference that showed on one fitting alone is neither half the arm’s nor half the valve’s', () => {
    // .541 for A on P alone: the means are −.0095 each, as if it were split; what neither accounts for is −.0095 too.
    const [outcome] = swapTests([
      read('A', 'P', 0.541),
      read('B', 'P', 0.56),
      read('A', 'Q', 0.56),
      read('B', 'Q', 0.56),
    ]);
    expect((outcome?.rest ?? 0) / IN).toBeCloseTo(-0.0095, 12);
    expect([outcome?.verdict, outcome?.because]).toEqual(['cannot-tell', 'gone']);
  });

  test('within what the readings are good for nothing is told: .010 with ± .030 on each', () => {
    const wide = modelled({ A: -0.01, B: 0 }, { P: 0, Q: 0 }).map((each) => ({ ...each, half: 0.03 * IN }));
    expect(swapTests(wide)[0]?.verdict).toBe('cannot-tell');
    // ½√(4 · .03²) = .03, by hand.
    expect((swapTests(wide)[0]?.half ?? 0) / IN).toBeCloseTo(0.03, 12);
  });

  test('three readings of the four decide nothing', () => {
    expect(swapTests(modelled({ A: -0.02, B: 0 }, { P: 0, Q: 0 }).slice(0, 3))).toEqual([]);
  });
});

describe('which of the two is the odd one', () => {
  const named = (arm: Record<string, number>, place: Record<string, number>) => {
    const four = modelled(arm, place);
    const [outcome] = swapTests(four);
    if (outcome === undefined) throw new Error('no outcome');
    const { arm: a, place: p } = oddOfSwap(
      outcome,
      four.reduce((sum, { lift }) => sum + lift, 0) / 4,
      0.56 * IN,
    );
    return [a === undefined ? undefined : outcome.arms[a], p === undefined ? undefined : outcome.places[p]];
  };

  test('the one that is unlike the siblings, low or high', () => {
    expect(named({ A: -0.02, B: 0 }, { P: 0, Q: 0.001 })).toEqual(['A', undefined]);
    expect(named({ A: 0, B: 0.02 }, { P: 0, Q: 0.001 })).toEqual(['B', undefined]);
    expect(named({ A: 0, B: 0.001 }, { P: 0, Q: -0.018 })).toEqual([undefined, 'Q']);
    expect(named({ A: -0.02, B: 0 }, { P: 0, Q: 0.015 })).toEqual(['A', 'Q']);
  });

  test('where the siblings stand in the middle of the two, neither is named', () => {
    expect(named({ A: -0.01, B: 0.01 }, { P: 0, Q: 0 })).toEqual([undefined, undefined]);
  });

  test('without siblings neither is named', () => {
    const four = modelled({ A: -0.02, B: 0 }, { P: 0, Q: 0 });
    const [outcome] = swapTests(four);
    expect(outcome === undefined ? {} : oddOfSwap(outcome, 0.55 * IN, undefined)).toEqual({});
  });
});
