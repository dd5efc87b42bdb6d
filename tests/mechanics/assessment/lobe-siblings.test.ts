import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { PLAIN, read } from './plain-build.ts';

/*
 * The card prints .350. A lobe that reads .330 is .020 under it; .010 is the wear limit, and two others of its side that
 * read .330 too speak for another card: common practice, no published source. A caliper on a loose cam reads low, and a
 * guess was read with nothing.
 */
const LOW = read(1, 'intake', 'lobe-lift', 0.33);
const lobe = (cylinder: number, value: number, more: Partial<SheetEvidence> = {}) =>
  read(cylinder, 'intake', 'lobe-lift', value, more);

const notToRun = (others: readonly SheetEvidence[]) =>
  assess({ ...PLAIN, sheet: [LOW, ...others] }).notToRun.map(({ sentence }) => sentence);
const IS_SAID = [
  expect.stringMatching(/^Do not run it: the lobe of 1 intake reads \.330 in, \.020 in under/),
];

describe('which lobes of its side a low one is set beside', () => {
  test('two that were read with an indicator and are as low: it is the card', () => {
    expect(notToRun([lobe(3, 0.33), lobe(5, 0.3305)])).toEqual([]);
  });

  test.each(['caliper', 'guess', 'rule'])('by %s they say nothing of the card', (tool) => {
    expect(notToRun([lobe(3, 0.33, { tool }), lobe(5, 0.33, { tool })])).toEqual(IS_SAID);
  });

  test('a caliper beside an indicator takes nothing from what the indicator reads', () => {
    const both = [lobe(3, 0.33), lobe(5, 0.33), lobe(5, 0.318, { tool: 'caliper' })];
    expect(notToRun(both)).toEqual([]);
  });

  test('one that was read twice and does not repeat says nothing, whichever was kept last', () => {
    const apart = [lobe(3, 0.33), lobe(5, 0.35), lobe(5, 0.33)];
    expect(notToRun(apart)).toEqual(expect.arrayContaining(IS_SAID));
    expect(notToRun(apart.toReversed())).toEqual(notToRun(apart));
  });
});
