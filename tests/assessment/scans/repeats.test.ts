import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, ScanEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { curve, scan, scanned } from './scans.ts';

/*
 * Scans that can't all be right. Two readings of one gap come within the dial's ±.002 either way, .004 (trade practice,
 * section 3: set-up ±.001 to .002); street intake .080 (trade press).
 */
const codes = (evidence: Evidence) => assess(evidence).questions.map(({ code }) => code);
const gap = (evidence: Evidence, place = '1-intake') =>
  assess(evidence).judgements.find(({ id }) => id === `gap:piston-to-valve:${place}`);
const least = (evidence: Evidence, { id }: ScanEvidence) => {
  const found = assess(evidence).quantities.find((each) => each.id === `scan-least:${id}`);
  return [found?.value, found?.low, found?.high].map((si) =>
    si === undefined ? undefined : Number((si / IN).toFixed(3)),
  );
};

describe('the same valve scanned again, the same way', () => {
  const [a, b, c] = [scan(curve(0.112)), scan(curve(0.093)), scan(curve(0.122))];

  test('.093, .112 and .122 are asked about, and the least is told no finer than half of what they lie apart', () => {
    for (const scans of [
      [a, b, c],
      [c, a, b],
    ]) {
      const evidence = scanned(scans);
      expect(codes(evidence)).toContain('scans-apart');
      // .122 − .093 = .029: .093 − .002 − .0145 = .0765, under .080, by hand.
      expect(least(evidence, b)).toEqual([0.093, 0.077, 0.095]);
      expect(gap(evidence)?.word).toBe('close');
    }
  });

  test('.112 and .111 are alike', () => {
    const evidence = scanned([a, scan(curve(0.111))]);
    expect(codes(evidence)).not.toContain('scans-apart');
    expect(gap(evidence)?.word).toBe('clear');
  });

  test('.004 apart is as far as two readings may be, to the last digit; .006 is more', () => {
    for (const other of [0.116, 0.108])
      expect(codes(scanned([a, scan(curve(other))]))).not.toContain('scans-apart');
    for (const other of [0.118, 0.106])
      expect(codes(scanned([a, scan(curve(other))]))).toContain('scans-apart');
  });

  test('a least that one figure makes uncertain may differ by as much more as that one is told within', () => {
    // .006 too much at 10° makes it .114 ± .0055: of .108 ± .002 it may be the same gap, of .106 not.
    const uneven = scan(curve(0.112).map(([at, each]) => [at, at === 10 ? each + 0.006 : each] as const));
    expect(least(scanned([uneven]), uneven)).toEqual([0.114, 0.109, 0.12]);
    expect(codes(scanned([uneven, scan(curve(0.108))]))).not.toContain('scans-apart');
    expect(codes(scanned([uneven, scan(curve(0.106))]))).toContain('scans-apart');
  });

  test('what was changed between them explains them; the least stands all the same', () => {
    const evidence = scanned([a, b]);
    const asked = assess(evidence).questions.find(({ code }) => code === 'scans-apart');
    const answer = {
      id: 'answer',
      line: 9,
      questionId: asked?.id ?? '',
      code: 'scans-apart',
      question: asked?.ask ?? '',
      answer: 'changed: the cam was advanced',
    };
    expect(least({ ...evidence, answers: [answer] }, b)).toEqual([0.093, 0.091, 0.095]);
  });

  test('another arm is another gap; the larger one may be so for its running spring or its lash', () => {
    expect(codes(scanned([a, { ...b, armId: 'b' }]))).not.toContain('scans-apart');
    // .112 − .002 less .020 of lash is .090, less what bends .070 at most: under .093 + .002 either way.
    for (const other of [{ spring: 'running' }, { lash: 'set', lashSetting: 0.02 * IN }] as const)
      expect(codes(scanned([{ ...a, ...other }, b]))).not.toContain('scans-apart');
  });

  test('what only makes a gap read larger explains no smaller one: trade practice 2.4 and 2.5', () => {
    // At most .095 is left in .093, whatever bent or was open under it; .112 on a light spring at zero lash is no less than .110.
    for (const other of [{ spring: 'running' }, { lash: 'set', lashSetting: 0.02 * IN }] as const)
      expect(codes(scanned([a, { ...b, ...other }]))).toContain('scans-apart');
  });
});

describe('a lifter that sinks', () => {
  const hydraulic = (size: number) => scan(curve(size), { lifter: 'hydraulic' });

  test('reads too large: no more than what was read is told', () => {
    const sinking = hydraulic(0.12);
    expect(least(scanned([sinking]), sinking)).toEqual([undefined, undefined, 0.122]);
    expect(gap(scanned([hydraulic(0.12)]))?.sentence).toMatch(/less than \.122 in/);
    expect(gap(scanned([hydraulic(0.07)]))?.sentence).toMatch(/less than \.072 in.*short/);
  });

  test('can’t read less than a solid one: asked; more it may', () => {
    const solid = scan(curve(0.112));
    expect(codes(scanned([hydraulic(0.072), solid]))).toContain('scans-apart');
    expect(codes(scanned([hydraulic(0.14), solid]))).not.toContain('scans-apart');
  });
});

test('the figures of one valve on another are asked about before they count', () => {
  const evidence = scanned([scan(curve(0.112)), scan(curve(0.112), { cylinder: 3 })]);
  expect(codes(evidence)).toEqual(['scan-copied']);
  expect(gap(evidence)?.word).toBe('clear');
  expect(gap(evidence, '3-intake')?.word).toBeUndefined();
  expect(codes(scanned([scan(curve(0.112)), scan(curve(0.1121), { cylinder: 3 })]))).toEqual([]);
});

test('a gap far off between its neighbours is asked about: .430 between two of .150', () => {
  const jump = curve(0.15).map(([angle, size]) => [angle, angle === 10 ? 0.43 : size] as const);
  expect(codes(scanned([scan(jump)]))).toEqual(['scan-jumps']);
  expect(gap(scanned([scan(jump)]))?.word).toBeUndefined();
  expect(codes(scanned([scan(curve(0.15))]))).toEqual([]);
});

test('a least that is only the least so far has no ±', () => {
  for (const so of [curve(0.1, 0, 8), curve(0.1, -11, 29, 10)]) {
    const only = scan(so);
    const [value, low] = least(scanned([only]), only);
    expect([value, low]).toEqual([expect.closeTo(0.1, 2), undefined]);
    expect(
      assess(scanned([only]))
        .headlines.map(({ sentence }) => sentence)
        .join(' '),
    ).toMatch(/least so far \.1/);
  }
});

test('nothing left is said so', () => {
  expect(gap(scanned([scan(curve(0))]))?.sentence).toMatch(/no room left \(\.002 at the best\).*short/);
});
