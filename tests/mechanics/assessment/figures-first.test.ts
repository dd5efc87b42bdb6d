import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN, LBF, MM } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from './plain-build.ts';
import { answered, heard } from './whole-sheet.ts';

/* Figures of an invented build that are likely written wrong, and what comes out of them. */
const CHOOSE: Evidence = {
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'choose-ratio' },
  rockers: { soldAs: 1.5, planned: 1.6 },
};

describe('a figure far out of the ordinary is asked before anything rests on it', () => {
  test('a seat load, before the studs', () => {
    const heavy = { ...CHOOSE, springs: { ...PLAIN.springs, seatLoad: 1400 * LBF } };
    const { next, asks } = heard(heavy);
    expect(next).toBe('figure-unusual');
    expect(asks).toContain('stud-load');
    expect(heard(answered(heavy, 'figure-unusual', 'found')).sentence).not.toMatch(/reading/);
  });

  test('a planned ratio, before its parts are changed', () => {
    const plan = (planned: number) => heard({ ...CHOOSE, rockers: { soldAs: 1.5, planned } });
    expect(plan(2.6).next).toBe('figure-unusual');
    expect(plan(2.6).all.notToRun.length).toBeGreaterThan(0);
    expect(plan(1.85).asks).not.toContain('figure-unusual');
  });

  test('a ratio that is planned for buckets', () => {
    const { asks, headlines } = heard({ ...CHOOSE, engine: { cylinders: 4, gear: 'bucket' } });
    expect(asks).toContain('figures-impossible');
    expect(headlines.join(' ')).not.toMatch(/a ratio to calculate with/);
  });
});

test('a gap in millimetres is told to the hundredth that it comes to: 38 − 11.13 − 26 = 0.87', () => {
  const metric: Evidence = {
    ...CHOOSE,
    call: { ...CHOOSE.call, units: 'metric' },
    engine: { cylinders: 4, lifter: 'solid-flat', mounting: 'shaft' },
    card: { assumedRatio: 1.3, intake: { lobeLift: 7.62 * MM, lash: 0.3 * MM }, exhaust: {} },
    springs: { installedHeight: 38 * MM, solidHeight: 26 * MM },
    rockers: { soldAs: 1.3, planned: 1.5 },
  };
  const told = heard(metric).all.judgements.map(({ sentence }) => sentence);
  expect(told.find((sentence) => /^Room to coil bind/.test(sentence))).toMatch(/: 0\.87 mm/);
  const inch = heard({ ...metric, call: CHOOSE.call }).all.details.change[0]?.gaps[0]?.after;
  expect((inch?.value ?? 0) / IN).toBeCloseTo(0.034, 9);
});
