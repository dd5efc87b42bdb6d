import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { DEG, IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from './plain-build.ts';
import { type GapAt, pointsOf, scanEvidence } from './scan-evidence.ts';
import { answered, heard } from './whole-sheet.ts';

/* A scan with the arms before of which one figure jumps, and a planned ratio. Invented. */
const lobe = {
  lobeLift: 0.35 * IN,
  centreline: 108 * DEG,
  durations: [
    { atLift: 0.05 * IN, duration: 230 * DEG },
    { atLift: 0.006 * IN, duration: 280 * DEG },
  ],
};
const scanned = (points: readonly GapAt[]): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'clearances-after-a-change' },
  card: { assumedRatio: 1.5, intake: lobe, exhaust: {} },
  engine: { ...PLAIN.engine, stroke: 3.48 * IN, rodLength: 5.7 * IN, valveAngle: 23 * DEG },
  rockers: { soldAs: 1.5, planned: 1.6 },
  scans: [scanEvidence(pointsOf(points), { arms: 'before' })],
});
const pistonGap = (evidence: Evidence) =>
  heard(evidence)
    .all.details.change.find(({ about }) => about.of === 'valve')
    ?.gaps.find(({ name }) => name === 'piston-to-valve');

describe('a point of a scan that stands far over its neighbours', () => {
  const high = scanned([
    [0, 0.125],
    [5, 0.1],
    [10, 0.81],
    [15, 0.09],
    [20, 0.11],
  ]);

  test('has no curve through it: the least is not far under all that was read', () => {
    const { least } = heard(high).all.details.scans.scans[0] ?? {};
    expect((least?.value ?? 0) / IN).toBeGreaterThan(0.08);
    expect((least?.value ?? 1) / IN).toBeLessThanOrEqual(0.09);
  });

  test('and nothing has a word by it, with the planned ratio either: it is asked first', () => {
    const { all, sentence } = heard(high);
    expect(pistonGap(high)?.word).toBeUndefined();
    expect(all.notToRun).toEqual([]);
    expect(sentence).toMatch(/Is the gap of 1 intake at 10° after TDC read and written right/);
  });
});

test('one that stands far under them is short as it stands, and asked before parts are changed', () => {
  const low = scanned([
    [0, 0.125],
    [5, 0.108],
    [10, 0.101],
    [15, 0.0106],
    [20, 0.125],
  ]);
  expect(pistonGap(low)?.word).toBe('short');
  expect(heard(low).next).toBe('scan-jumps');
  // Found written wrong it makes no word of the plan: it is put right or struck out.
  const wrong = answered(low, 'scan-jumps', 'found', 50);
  expect(pistonGap(wrong)?.word).toBeUndefined();
  expect(heard(wrong).sentence).toMatch(/that scan put right or struck out/);
});
