import { describe, expect, test } from 'vitest';
import type { Headline, Subject } from '../../../server/mechanics/assessment/assessment.ts';
import { inOrderOf } from '../../../server/mechanics/assessment/headline-order.ts';

/* Which of several answers is told first; common practice, no published source. */
const valve = (cylinder: number): Subject => ({ of: 'valve', cylinder, valve: 'exhaust' });
const told = (id: string, step: Headline['step'], about: Subject): Headline => ({
  id,
  step,
  about,
  sentence: id,
});
const HEADLINES = [
  told('wide', 'adjuster', valve(2)),
  told('ratio', 'ratio', valve(1)),
  told('sinking', 'adjuster', valve(1)),
  told('sum', 'adjuster', valve(1)),
];
const none = { stop: [], notToRun: [] };
const ids = (headlines: readonly Headline[]) => headlines.map(({ id }) => id);

describe('of the answers of one step', () => {
  test('that of a valve that is not to be run goes first, and none is left out', () => {
    const grave = { ...none, notToRun: [{ about: valve(1) }] };
    expect(ids(inOrderOf('adjuster', HEADLINES, grave))).toEqual(['sinking', 'sum', 'wide', 'ratio']);
    expect(ids(inOrderOf('verify-ratio', HEADLINES, grave))).toEqual(['ratio', 'sinking', 'sum', 'wide']);
  });

  test('that of a valve that is not to be turned goes first as well', () => {
    const grave = { ...none, stop: [{ about: valve(1) }] };
    expect(ids(inOrderOf('adjuster', HEADLINES, grave))[0]).toBe('sinking');
  });

  test('parts that are only thought of beside others put nothing first', () => {
    const grave = { ...none, notToRun: [{ about: valve(1), beside: true as const }] };
    expect(ids(inOrderOf('adjuster', HEADLINES, grave))).toEqual(['wide', 'sinking', 'sum', 'ratio']);
    expect(ids(inOrderOf('adjuster', HEADLINES, none))).toEqual(['wide', 'sinking', 'sum', 'ratio']);
  });
});
