import { describe, expect, test } from 'vitest';
import { readBetween, saysBetween } from '../../../shared/quantities/read-between.ts';

/** Ways people say it: common practice, no source. */
describe('readings between two gauges', () => {
  test.each([
    ['more than .024, less than .028', 0.024, 0.028],
    ['over .024 and under .028', 0.024, 0.028],
    ['less than .028, more than .024', 0.024, 0.028],
    ['between .024 and .028 in', 0.024, 0.028],
    ['.024 to .028', 0.024, 0.028],
    ['.024–.028', 0.024, 0.028],
    ['.024 goes, .028 doesn’t', 0.024, 0.028],
    ['go .024 no-go .028', 0.024, 0.028],
    ['> .024 < .028', 0.024, 0.028],
  ])('%s', (text, low, high) => {
    expect(readBetween(text, 'in')).toEqual({ ok: true, between: { low, high, unit: 'in' } });
  });

  test('an end that no gauge has found stays open', () => {
    expect(readBetween('over .040', 'in')).toEqual({ ok: true, between: { low: 0.04, unit: 'in' } });
    expect(readBetween('.028 does not go', 'in')).toEqual({ ok: true, between: { high: 0.028, unit: 'in' } });
  });

  test('the unit of the last figure counts for both', () => {
    expect(readBetween('between .60 and .70 mm', 'in')).toEqual({
      ok: true,
      between: { low: 0.6, high: 0.7, unit: 'mm' },
    });
  });

  test('the gauge that goes is the smaller', () => {
    expect(readBetween('more than .028, less than .024', 'in').ok).toBe(false);
  });

  test('one figure is no interval, nor is a mixed number', () => {
    for (const text of ['.482', '1-1/2 in', '7/16', '4 turns 82'])
      expect(saysBetween(text), text).toBe(false);
  });
});
