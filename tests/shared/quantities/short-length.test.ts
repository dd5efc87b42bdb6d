import { describe, expect, test } from 'vitest';
import { shortLength } from '../../../shared/quantities/short-length.ts';
import { speaking } from '../../../shared/quantities/spoken-units.ts';

const MM = 0.001;

describe('a size in the unit that is spoken', () => {
  // By definition 1 in = 25.4 mm (NIST SP 811, 2008, B.8).
  test.each([
    [11.06 * MM, '11.06 mm', '.4354 in'],
    [11.08 * MM, '11.08 mm', '.4362 in'],
    [(7 / 16) * 25.4 * MM, '11.11 mm', '.4375 in'],
  ])('%d m', (si, metric, inch) => {
    expect(speaking('metric', () => shortLength(si))).toBe(metric);
    expect(speaking('inch', () => shortLength(si))).toBe(inch);
  });
});
