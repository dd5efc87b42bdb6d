import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { intakes, PLAIN, read } from './plain-build.ts';

const told = (sheet: readonly SheetEvidence[], more: Partial<Evidence> = {}): string =>
  assess({ ...PLAIN, ...more, sheet })
    .headlines.map(({ sentence }) => sentence)
    .join('\n');

const upTo = (cylinder: number): SheetEvidence[] => intakes().filter((each) => each.cylinder <= cylinder);

describe('a sheet counts what was read out of what the engine has', () => {
  test('all of eight is all', () => {
    expect(told(intakes())).toContain('No intake stands out: all 8 lie within');
  });

  test('five of eight are so many read so far', () => {
    expect(told(upTo(5))).toContain('No intake stands out: the 5 read so far (of 8) lie within');
    expect(told(upTo(5))).not.toContain('all 5');
  });

  test('a ninth intake of an eight is asked about, and no ninth is counted', () => {
    const ninth = [read(9, 'intake', 'lobe-lift', 0.35), read(9, 'intake', 'valve-lift', 0.56)];
    expect(told([...intakes(), ...ninth])).toContain('No intake stands out: all 8 lie within');
    expect(told([...intakes(), ...ninth])).not.toMatch(/\b9 (intakes|lie)/);
    expect(assess({ ...PLAIN, sheet: [...intakes(), ...ninth] }).questions.map(({ code }) => code)).toContain(
      'no-such-valve',
    );
  });

  test('of an engine whose cylinders nobody said nothing is all', () => {
    const { cylinders: _, ...engine } = PLAIN.engine;
    expect(told(upTo(4), { engine })).toContain('No intake stands out: the 4 read so far lie within');
  });

  test('a side that is off, and lobes that are off the card, are counted the same way', () => {
    const low = upTo(5).map((each) => {
      const { value = 0 } = each.reading;
      return { ...each, reading: { value: value * (each.kind === 'valve-lift' ? 0.9 : 1) } };
    });
    expect(told(low)).toContain('The 5 intakes read so far (of 8) read alike');
    const lobes = upTo(5).map(({ reading: { value = 0 }, ...each }) => ({
      ...each,
      reading: { value: value * 0.95 },
    }));
    expect(told(lobes)).toContain('The 5 intake lobes read so far (of 8) read about');
  });
});
