import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { QUESTIONS } from '../../../server/mechanics/assessment/noise/answers.ts';
import { logged, said } from './noise-build.ts';
import { PLAIN } from './plain-build.ts';

/* How each valve gear is made, from memory: a bucket has no arm, no ratio and no tip that sweeps; a hydraulic one no lash. */

const BUCKET: Evidence = {
  ...PLAIN,
  engine: { cylinders: 4, gear: 'bucket', lifter: 'solid-flat' },
  rockers: {},
  arms: [],
  seats: [],
  setUps: [],
};
type Goal = Evidence['call']['goal'];
const bucket = (goal: Goal, more: Partial<Evidence> = {}) =>
  assess({ ...BUCKET, ...more, call: { ...BUCKET.call, goal } });

/** Lobes alike but for a few hundredths of a millimetre. */
const sheetLobe = (cylinder: number, valve: 'intake' | 'exhaust'): SheetEvidence => ({
  id: `lobe-${cylinder}-${valve}`,
  line: 20 + cylinder,
  standing: true,
  cylinder,
  valve,
  kind: 'lobe-lift',
  reading: { value: (valve === 'intake' ? 0.009 : 0.0092) + cylinder * 1e-5 },
  readAs: '',
  tool: 'indicator',
  spring: 'light',
  lifter: 'solid',
  arms: 'these',
});

describe('a call about a bucket engine ends with something told', () => {
  test.each<[Goal, RegExp]>([
    ['identify', /is not named from its sizes\. Instead: its marks word for word/],
    ['returned-part', /is not named from its sizes\. Instead: its marks word for word/],
    ['verify-ratio', /there is no ratio to read/],
    ['geometry', /no tip that sweeps/],
    ['choose-ratio', /is not worked out for an overhead cam\. Instead: room to coil bind/],
    ['clearances-after-a-change', /is not worked out for an overhead cam\. Instead: room to coil bind/],
  ])('%s', (goal, wanted) => {
    expect(bucket(goal).headlines[0]?.sentence).toMatch(wanted);
    const { next } = bucket(goal, {
      card: { intake: { lobeLift: 0.009 }, exhaust: { lobeLift: 0.009 } },
    });
    if (next?.action === 'said') expect(next.sentence).toMatch(wanted);
  });

  test('hydraulic: no lash is asked for, and what is done instead is told', () => {
    const hydraulic = bucket('adjuster', { engine: { ...BUCKET.engine, lifter: 'hydraulic-flat' } });
    expect(hydraulic.next?.sentence).toMatch(/^Say what was found\. Hydraulic buckets have no lash/);
  });

  test('what was found of it is the answer', () => {
    const { headlines } = bucket('adjuster', {
      lash: [logged(1, 'found', 0.008, 'not-looked', { shim: 0.0025 })],
    });
    expect(headlines.map(({ id }) => id)).not.toContain('headline:valve-gear');
    expect(headlines.length).toBeGreaterThan(0);
  });

  test('a noise of which nobody knows anything is told as no verdict once nothing is left to ask', () => {
    const answers = QUESTIONS.map((code, at) =>
      said(code, code === 'noise-signs' ? 'none' : 'not-known', { line: 60 + at }),
    );
    const asked = bucket('noise-or-failure', { answers });
    expect(asked.next?.action).toBe('lash');
    expect(asked.headlines).toEqual([]);
    const lobes = [1, 2, 3, 4].flatMap((cylinder) =>
      (['intake', 'exhaust'] as const).map((valve) => sheetLobe(cylinder, valve)),
    );
    const hydraulic = { ...BUCKET.engine, lifter: 'hydraulic-flat' } as const;
    const read = bucket('noise-or-failure', {
      engine: hydraulic,
      answers,
      sheet: lobes,
      card: { intake: {}, exhaust: {} },
    });
    // With every lobe read, none is asked for of a valve that nobody can name.
    expect(read.next?.action).not.toBe('lobe');
    expect(read.headlines.map(({ sentence }) => sentence)).toContain(
      'No verdict. Nothing points to one cause yet.',
    );
  });

  test('a pushrod engine is told nothing of the kind', () => {
    for (const goal of ['identify', 'verify-ratio', 'geometry'] as const)
      expect(assess({ ...PLAIN, call: { ...PLAIN.call, goal } }).headlines.map(({ id }) => id)).not.toContain(
        'headline:valve-gear',
      );
  });
});
