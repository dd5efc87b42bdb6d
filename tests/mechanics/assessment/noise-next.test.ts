import { describe, expect, test } from 'vitest';
import { nextOfNoise } from '../../../server/mechanics/assessment/next/of-noise.ts';
import { logged, noiseOf, said } from './noise-build.ts';
import { intakes } from './plain-build.ts';

/* Common practice, no published source: damage is asked after first, what takes turning or loses the gap comes last. */

const one = said('noise-which', 'one', { place: { cylinder: 5, valve: 'exhaust' } });

describe('what is asked next', () => {
  const checks = (more: Parameters<typeof noiseOf>[0] = {}) => noiseOf(more).details.noise.checks;
  const codes = (more: Parameters<typeof noiseOf>[0] = {}) => checks(more).map(({ code }) => code);

  test('damage first, then lifters and valve; as it stands, the gap, parts off, the lobe at last', () => {
    const order = codes({ engine: { cylinders: 8, mounting: 'stud' } });
    expect(order.slice(0, 3)).toEqual(['noise-signs', 'lifter', 'noise-which']);
    const at = (code: string) => order.indexOf(code);
    expect(at('noise-nut')).toBeLessThan(at('lash'));
    expect(at('lash')).toBeLessThan(at('noise-tip'));
    expect(at('noise-tip')).toBeLessThan(at('lobe'));
    expect(order).not.toContain('touching');
    expect(order.at(-1)).toBe('lobe');
    for (const { code, turns } of checks()) expect(turns, code).toBe(code === 'lash' || code === 'lobe');
  });

  test('what is known is not asked; signs that nobody knew of are, by looking', () => {
    expect(codes({ answers: [said('noise-signs', 'none')] })).not.toContain('noise-signs');
    const [again] = checks({ answers: [said('noise-signs', 'not-known')] });
    expect(again?.code).toBe('noise-signs');
    expect(again?.sentence).toContain('filter');
    expect(codes({ lash: [logged(1, 'found', 0.02)] })).not.toContain('lash');
    expect(codes({ lash: [logged(1, 'set', 0.02)] })).toContain('lash');
    const logs = [logged(1, 'set', 0.018), logged(2, 'found', 0.018, 'held')];
    expect(codes({ lash: logs })).not.toContain('noise-history');
    expect(codes({ lash: logs })).not.toContain('noise-nut');
    expect(
      codes({ lash: [logs[0], logged(2, 'found', 0.03, 'held', { engine: 'hot' })].flatMap((l) => l ?? []) }),
    ).toContain('lash');
    expect(
      codes({
        sheet: intakes(),
        answers: [said('noise-which', 'one', { place: { cylinder: 2, valve: 'intake' } })],
      }),
    ).not.toContain('lobe');
  });

  test('it is said which causes it tells apart, and how many pairs; what says only what is asked claims none', () => {
    const known = noiseOf({
      engine: { cylinders: 8, lifter: 'solid-flat', mounting: 'stud' },
      answers: [said('noise-signs', 'none'), one],
    }).details.noise;
    const [check] = known.checks;
    const names = check?.apart?.map((cause) => known.candidates.find((each) => each.cause === cause)?.said);
    expect(names).toHaveLength(2);
    expect(nextOfNoise(known).ask?.reason).toBe(
      `It tells ${names?.join(' from ')}; ${check?.pairs} pairs of causes in all.`,
    );
    const unmounted = noiseOf({
      engine: { cylinders: 8, lifter: 'solid-flat' },
      answers: [said('noise-signs', 'none')],
    }).details.noise;
    expect(unmounted.checks[0]).toMatchObject({ code: 'mounting', pairs: 0 });
    expect(nextOfNoise(unmounted).ask?.reason).not.toMatch(/tells/);
  });

  test('what would tell is what is asked next', () => {
    const answers = [said('noise-signs', 'none'), one];
    for (const more of [
      [],
      [said('noise-hours', 'slowly')],
      [said('noise-hours', 'slowly'), said('noise-nut', 'held')],
    ]) {
      const noise = noiseOf({ answers: [...answers, ...more] });
      const line = noise.headlines.find(({ step }) => step === 'noise')?.sentence;
      const [next] = noise.details.noise.checks;
      expect(noise.next?.action).toBe(next?.code);
      expect(line).toContain(`What would tell: ${next?.thing ?? ''}.`);
    }
  });

  test('oil that is low is put right before anything is read, until advice was given', () => {
    const answers = [
      ...[said('noise-signs', 'none'), said('noise-which', 'all'), said('noise-oil', 'low')],
      ...[said('noise-hours', 'slowly'), said('noise-heat', 'hot'), said('noise-speed', 'from-idle')],
      ...[said('noise-nut', 'held'), said('noise-history', 'not-again'), said('noise-set-screw', 'tight')],
      ...[said('noise-nut-used', 'new'), said('noise-stud', 'firm')],
    ];
    const engine = { cylinders: 8, lifter: 'hydraulic-roller', mounting: 'stud' } as const;
    const low = noiseOf({ engine, answers });
    expect(low.next).toMatchObject({ action: 'oil-low', turns: false });
    expect(low.next?.sentence).toMatch(/filled to its mark.*gauge.*comes up at the valves/);
    expect(low.notToRun[0]?.wayOut).toMatch(/to its mark.*gauge.*comes up at the valves/);
    const usual = said('noise-oil', 'usual', { line: 70 });
    expect(noiseOf({ engine, answers: [...answers, usual] }).next?.action).not.toBe('oil-low');
    const notes = [{ id: 'note', line: 99, kind: 'advice' as const, body: 'fill it', done: false }];
    expect(noiseOf({ engine, answers, notes }).next?.action).not.toBe('oil-low');
  });

  test('no lash of a hydraulic lifter, nor with parts off; touching once something speaks for it', () => {
    expect(codes({ engine: { cylinders: 8, lifter: 'hydraulic-roller', mounting: 'stud' } })).not.toContain(
      'lash',
    );
    expect(codes({ answers: [said('noise-tip', 'smooth')] })).not.toContain('lash');
    expect(codes({ answers: [said('noise-tip', 'not-known')] })).toContain('lash');
    const bent = noiseOf({ answers: [said('noise-signs', 'contact')] });
    expect(bent.details.noise.checks.map(({ code }) => code)).toContain('touching');
    const apart = noiseOf({}, { engineState: 'apart' });
    expect(apart.details.noise.checks.map(({ code }) => code)).not.toContain('lash');
  });

  test('of the next ones the first that stands, the first that is looked at, the first that is read', () => {
    const { details } = noiseOf({});
    const next = nextOfNoise(details.noise);
    expect(next.ask).toMatchObject({
      action: 'noise-signs',
      id: 'next:noise:noise-signs',
      about: { of: 'build' },
    });
    expect(next.look).toMatchObject({ action: 'lash', step: 'adjuster', turns: true });
    expect(next.read).toMatchObject({ action: 'lobe', step: 'sheet', turns: true });
    expect(nextOfNoise({ ...details.noise, active: false })).toEqual({
      ask: undefined,
      look: undefined,
      read: undefined,
    });
    const named = nextOfNoise(noiseOf({ answers: [one] }).details.noise);
    expect(named.read?.about).toMatchObject({ of: 'valve', cylinder: 5, valve: 'exhaust' });
    expect(named.read?.sentence).toContain('5 exhaust');
  });

  test('the two that stand first, and what would part them', () => {
    const { nearest, candidates } = noiseOf({ answers: [said('noise-nut', 'held')] }).details.noise;
    const left = candidates.filter(({ remains }) => remains);
    expect(nearest?.causes).toEqual(left.slice(0, 2).map((each) => each.said));
    for (const { cause, against } of candidates) {
      if (['nut-lock', 'stud-top', 'stud-thread'].includes(cause)) expect(against).toHaveLength(1);
    }
  });
});
