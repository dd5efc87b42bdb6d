import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { about, line, log, toldOf } from './lash-log.ts';
import { factsOf, logged, noiseOf, said } from './noise-build.ts';

/* How each valve gear is made: general knowledge, from memory. */
const engine = (more: Partial<Evidence['engine']>): Evidence['engine'] => ({ cylinders: 8, ...more });
const askedOf = (more: Partial<Evidence['engine']>): string[] =>
  noiseOf({ engine: engine(more), answers: [said('noise-signs', 'none')] }).questions.map(({ code }) => code);

describe('what is asked of a noise', () => {
  test.each([
    ['pedestal', { mounting: 'pedestal', lifter: 'hydraulic-flat' }],
    ['shaft', { mounting: 'shaft', lifter: 'hydraulic-flat' }],
    ['hydraulic pivot', { gear: 'finger-follower', lifter: 'hydraulic-flat' }],
    ['hydraulic bucket', { gear: 'bucket', lifter: 'hydraulic-flat' }],
  ] as const)('%s: nothing is set, so nobody set it again', (_, more) => {
    expect(askedOf(more)).not.toContain('noise-history');
  });

  test('a pedestal’s bolt may have come loose, whatever the lifters are', () => {
    const told = noiseOf({ engine: engine({ mounting: 'pedestal', lifter: 'hydraulic-flat' }) });
    expect(told.questions.find(({ code }) => code === 'noise-nut')?.ask).toBe(
      'Had the bolt moved, before anything was touched?',
    );
    expect(askedOf({ mounting: 'shaft', lifter: 'hydraulic-flat' })).not.toContain('noise-nut');
  });

  test('an engine without lifters is not asked for them', () => {
    const { details } = noiseOf({
      engine: engine({ gear: 'cam-rocker' }),
      answers: [said('noise-signs', 'none')],
    });
    const check = details.noise.checks.find(({ code }) => code === 'lifter');
    expect(check?.sentence).toMatch(/^Is the lash set by a screw/);
  });
});

describe('a call about adjusters', () => {
  test('with a gap that grew on one valve asks nothing of a noise', () => {
    const grown = about(log([line(1, '2026-01-10', 0.02, { moment: 'set' }), line(2, '2026-02-10', 0.03)]));
    const { codes } = toldOf(grown);
    expect(codes).toContain('lash-grew');
    for (const code of ['noise-which', 'noise-heat', 'noise-hours', 'noise-speed'])
      expect(codes).not.toContain(code);
  });
});

describe('oil that is low', () => {
  const low = said('noise-oil', 'low', { line: 60 });
  const advice = (at: number) => ({
    id: `note-${at}`,
    line: at,
    kind: 'advice' as const,
    body: 'told',
    done: false,
  });
  const solid = engine({ mounting: 'stud', lifter: 'solid-flat' });
  const next = (at: number) =>
    noiseOf({
      engine: solid,
      answers: [
        said('noise-signs', 'none', { line: 51 }),
        said('noise-which', 'all', { line: 52 }),
        ...['noise-heat', 'noise-hours', 'noise-speed', 'noise-nut', 'noise-history'].map((code, index) =>
          said(code, 'not-known', { line: 53 + index }),
        ),
        low,
      ],
      notes: [advice(at)],
    }).next?.action;

  test('is put right, whatever was advised before; and is done with once that was advised', () => {
    expect(next(40)).toBe('oil-low');
    expect(next(70)).not.toBe('oil-low');
  });
});

describe('beside a gap that grew', () => {
  test('one that grew by what is ordinary is not said to have stayed', () => {
    const told = noiseOf({
      engine: engine({ mounting: 'stud', lifter: 'solid-flat' }),
      lash: [
        logged(1, 'set', 0.02),
        logged(2, 'found', 0.03),
        logged(1, 'set', 0.02, 'held', { cylinder: 4 }),
        logged(2, 'found', 0.0235, 'held', { cylinder: 4 }),
      ],
    });
    expect(factsOf(told, 'lash:others')[0]?.text).toBe(
      'Lash log: the gap of 4 intake grew by .0035 in, which is ordinary',
    );
  });

  test('an adjuster that was answered to have moved is asked why, while nothing was set since', () => {
    const answers = [
      said('noise-signs', 'none', { line: 51 }),
      said('noise-which', 'one', { line: 52, place: { cylinder: 2, valve: 'intake' } }),
      said('noise-nut', 'moved', { line: 53 }),
    ];
    const lash = [logged(1, 'set', 0.02), logged(2, 'found', 0.021)];
    const of = (lines: typeof lash) =>
      noiseOf({ engine: engine({ mounting: 'stud', lifter: 'solid-flat' }), answers, lash: lines }).details
        .noise.moved;
    expect(of(lash)?.why?.action).toBe('why-moved');
    expect(of([...lash, { ...logged(3, 'set', 0.02), line: 60 }])?.again?.action).toBe('lash-again');
  });
});
