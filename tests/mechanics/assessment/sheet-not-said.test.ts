import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { read } from './plain-build.ts';
import { answered, EIGHT, heard, sixteen } from './whole-sheet.ts';

/* A reading without its spring and lifter is asked for them: trade practice, Record; common practice, no published source. */
describe('a sheet whose spring and lifter nobody said', () => {
  const how = { lifter: 'not-said', spring: 'not-said' } as const;
  const { lifter: _, ...engine } = EIGHT.engine;
  const sheet = sixteen(1.61, ({ lift }, at) => (at === '5 intake' ? { lift: lift - 0.012 } : {}), how);
  const evidence: Evidence = { ...EIGHT, engine, sheet };

  test('is asked for each once, before anything is moved; the answer counts for its readings', () => {
    expect(heard(evidence).asks).toEqual(expect.arrayContaining(['spring-not-said', 'lifter-not-said']));
    expect(heard(evidence).next).toBe('spring-not-said');
    const light = answered(evidence, 'spring-not-said', 'light');
    expect(heard(light).headlines.join('\n')).toMatch(/5 intake is the odd one on the light spring/);
    expect(heard(light).next).toBe('lifter-not-said');
    expect(heard(answered(light, 'lifter-not-said', 'solid')).next).not.toMatch(/not-said/);
  });

  test('on an engine with solid lifters only the spring is asked for', () => {
    const { asks } = heard({ ...EIGHT, sheet });
    expect(asks).toContain('spring-not-said');
    expect(asks).not.toContain('lifter-not-said');
  });
});

describe('digits the wrong way round', () => {
  test('are those of each pass, not of their mean', () => {
    const twice = [
      ...sixteen(1.61, (_, at) => (at === '5 intake' ? { lift: 0.525 } : {})),
      read(5, 'intake', 'valve-lift', 0.526),
    ];
    expect(heard({ ...EIGHT, sheet: twice }).asks).not.toContain('digits-swapped');
  });

  test('are those that were typed: of millimetres two places', () => {
    const typed = (mm: number) =>
      sixteen(1.61, (_, at) => (at === '5 intake' ? { lift: mm / 25.4 } : {})).map((each) => ({
        ...each,
        readAs: `${((each.reading.value ?? 0) * 1000).toFixed(2)} mm`,
        perTurn: 0.001,
      }));
    // 1.6 × .350 in is 14.22 mm: 12.42 is that with its second and third digits exchanged.
    expect(heard({ ...EIGHT, sheet: typed(12.42) }).asks).toContain('digits-swapped');
    expect(heard({ ...EIGHT, sheet: typed(13.21) }).asks).not.toContain('digits-swapped');
  });
});
