import { describe, expect, it } from 'vitest';
import { explainReadings } from '../../../server/mechanics/explain-readings/explain.ts';
import type { ExplainResult } from '../../../server/mechanics/explain-readings/types.ts';
import { WORKED_CASES } from './cases.ts';

/** The printed figures hold to ±.001 of ratio, ±.01 of chance, ±.02 bits. */
const RATIO = 0.001;
const CHANCE = 0.01;
const BITS = 0.02;

function chanceOf(result: ExplainResult, key: string): number {
  const [name = '', causes] = key.split(' ');
  if (causes === undefined)
    return result.nominals.find(({ ratio }) => String(ratio) === name)?.probability ?? 0;
  const onCard = causes === 'wrong-card-row';
  return result.explanations
    .filter((one) => String(one.nominal) === name && one.causes.join('+') === causes)
    .filter((one) => (one.entry?.of === 'card') === onCard)
    .reduce((sum, one) => sum + one.probability, 0);
}

// Source: inference.md worked cases, independent implementation.
describe.each(WORKED_CASES)('worked case $row', (worked) => {
  // In each test: what is calculated while the file loads, no mutant changes.
  const answer = () => explainReadings(worked.input);

  it('gives the printed ratio and interval', () => {
    const result = answer();
    expect(Math.abs(result.ratio.median - worked.median)).toBeLessThanOrEqual(RATIO);
    expect(Math.abs(result.ratio.interval95[0] - worked.interval[0])).toBeLessThanOrEqual(RATIO);
    expect(Math.abs(result.ratio.interval95[1] - worked.interval[1])).toBeLessThanOrEqual(RATIO);
  });

  it('gives the printed chances', () => {
    const result = answer();
    for (const [key, printed] of Object.entries(worked.chances)) {
      expect(Math.abs(chanceOf(result, key) - printed), key).toBeLessThanOrEqual(CHANCE);
    }
    if (worked.noMistake !== undefined) {
      expect(Math.abs(result.noMistake - worked.noMistake)).toBeLessThanOrEqual(CHANCE);
    }
    if (worked.againstMark !== undefined) expect(result.againstMark).toBe(worked.againstMark);
  });

  it('offers the printed next reading, or none', () => {
    const result = answer();
    expect(result.settled).toBe(worked.settled);
    expect(result.nextReading?.action).toBe(worked.next?.action);
    if (worked.next === undefined) return;
    expect(Math.abs((result.nextReading?.bits ?? 0) - worked.next.bits)).toBeLessThanOrEqual(BITS);
  });
});
