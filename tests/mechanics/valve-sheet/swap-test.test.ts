import { describe, expect, test } from 'vitest';
import { IN } from '../../../server/mechanics/kit/si.ts';
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

  test('both, and neither: gone after refitting', () => {
    expect(swapTests(modelled({ A: -0.02, B: 0 }, { P: -0.02, Q: 0 }))[0]?.verdict).toBe('both');
    expect(swapTests(modelled({ A: -0.004, B: 0 }, { P: 0.003, Q: 0 }))[0]?.verdict).toBe('gone');
  });

  test('three readings of the four decide nothing', () => {
    expect(swapTests(modelled({ A: -0.02, B: 0 }, { P: 0, Q: 0 }).slice(0, 3))).toEqual([]);
  });
});
