import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';
import { read } from '../plain-build.ts';
import { answered, EIGHT, heard, setUpOn, sixteen } from '../whole-sheet.ts';

/* What is on may be one thing or another, and 1.7 is planned. Figures invented. */
const PLANNED: Evidence = {
  ...EIGHT,
  call: { ...EIGHT.call, goal: 'clearances-after-a-change' },
  rockers: { soldAs: 1.6, planned: 1.7, pivotToTip: 1.48 * IN },
};
const ratioBefore = (evidence: Evidence) =>
  heard(evidence).all.details.change.find(({ about }) => about.of === 'valve' && about.cylinder === 1)
    ?.before;
const gap = read(1, 'intake', 'pushrod-to-head', 0.08, { arms: 'before' });

describe('a ratio before of which nobody knows whether it holds', () => {
  const doubted: Evidence = {
    ...PLANNED,
    ...setUpOn(1, undefined, [0.5655, 0.565, 0.5655]),
    sheet: [...sixteen(1.6, (_, place) => (place === '1 intake' ? { lobe: 0.35, lift: 0.551 } : {})), gap],
  };

  test('is not calculated with: what they are sold as is, with its band', () => {
    expect(ratioBefore(doubted)?.from).toBe('sold-as');
    expect(ratioBefore(answered(doubted, 'read-otherwise', 'set-up'))?.from).toBe('measured');
  });

  test('and which of the two holds is asked before the card is read out', () => {
    expect(heard(doubted).next).toBe('read-otherwise');
  });

  test('lash that was left in makes no ratio before either', () => {
    const leftIn = answered({ ...PLANNED, sheet: [...sixteen(1.55), gap] }, 'lash-not-said', 'set');
    expect(ratioBefore(leftIn)?.from).toBe('sold-as');
  });
});

describe('piston to valve read on the running spring', () => {
  const close: Evidence = {
    ...PLANNED,
    sheet: [read(1, 'intake', 'piston-to-valve', 0.11, { arms: 'before', spring: 'running', tool: 'clay' })],
    taken: { intake: { lobeLiftAtClosest: 0.12 * IN }, exhaust: {} },
  };

  test('is told from its limit by a light spring, whatever is answered of the lash', () => {
    expect(heard(close).sentence).toMatch(/a reading on a light spring/);
  });
});

test('a gap that may touch is measured before a ratio is read back', () => {
  const sheet = [
    read(1, 'intake', 'pushrod-to-head', 0.07),
    read(1, 'intake', 'piston-to-valve', 0.105, { lash: 'zero' }),
  ];
  const evidence: Evidence = {
    ...PLANNED,
    rockers: { soldAs: 1.5, planned: 1.6, pivotToTip: 1.48 * IN },
    card: { ...EIGHT.card, assumedRatio: 1.5, exhaust: { lobeLift: 0.36 * IN, lash: 0.018 * IN } },
    taken: { intake: { lobeLiftAtClosest: 0.12 * IN }, exhaust: { lobeLiftAtClosest: 0.11 * IN } },
    ...setUpOn(1, undefined, [0.542, 0.5425, 0.542]),
    sheet,
  };
  expect(heard(evidence).next).toBe('gap-close:pushrod-to-head');
});
