import { describe, expect, test } from 'vitest';
import type {
  AnswerEvidence,
  Evidence,
  LashEvidence,
} from '../../../server/mechanics/assessment/evidence.ts';
import { IN, MM } from '../../../server/mechanics/kit/si.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { PLAIN } from './plain-build.ts';

const assess = assessAsTold('noise-of-gear');

/* Which parts an engine has: how each valve gear is made, general knowledge from memory, no published source. */

const said = (code: string, answer: string, line = 90): AnswerEvidence => ({
  id: `answer-${code}-${line}`,
  line,
  code,
  question: code,
  answer,
});
const line = (moment: 'set' | 'found', gap: number, more: Partial<LashEvidence> = {}): LashEvidence => ({
  id: `lash-${moment}`,
  line: moment === 'set' ? 1 : 2,
  standing: true,
  cylinder: 2,
  valve: 'intake',
  gap: { value: gap },
  readAs: '',
  moment,
  engine: 'cold',
  nut: 'not-looked',
  day: moment === 'set' ? '2026-03-01' : '2026-03-09',
  ...more,
});
const noise = (engine: Evidence['engine'], more: Partial<Evidence> = {}) =>
  assess({
    ...PLAIN,
    call: { ...PLAIN.call, goal: 'noise-or-failure', engineState: 'has-run' },
    engine,
    ...more,
  });

describe('a noise in an engine that has no such part', () => {
  test.each<[string, Evidence['engine'], string[], string[]]>([
    [
      'buckets',
      { cylinders: 4, gear: 'bucket', lifter: 'solid-flat' },
      ['nut-lock', 'stud-top', 'stud', 'pushrod', 'roller', 'trunnion'],
      ['noise-nut', 'noise-stud', 'noise-pushrod', 'noise-set-screw', 'noise-trunnion'],
    ],
    [
      'followers',
      { cylinders: 4, gear: 'finger-follower', lifter: 'hydraulic-flat' },
      ['nut-lock', 'stud', 'pushrod', 'trunnion'],
      ['noise-stud', 'noise-pushrod', 'noise-trunnion'],
    ],
    [
      'rockers on the cam',
      { cylinders: 4, gear: 'cam-rocker', lifter: 'solid-flat' },
      ['stud', 'pushrod'],
      ['noise-stud', 'noise-pushrod'],
    ],
    [
      'a shaft',
      { cylinders: 6, lifter: 'solid-flat', mounting: 'shaft' },
      ['stud', 'stud-top'],
      ['noise-stud', 'noise-stud-top', 'noise-set-screw'],
    ],
    [
      'pedestals and hydraulic lifters',
      { cylinders: 8, lifter: 'hydraulic-roller', mounting: 'pedestal' },
      // Its bolt may come loose, and nothing sets its gap.
      ['stud', 'stud-top'],
      ['noise-history', 'noise-stud'],
    ],
    [
      'a shaft and hydraulic lifters',
      { cylinders: 8, lifter: 'hydraulic-roller', mounting: 'shaft' },
      ['stud', 'nut-lock', 'stud-thread'],
      ['noise-nut', 'noise-stud', 'noise-history'],
    ],
  ])('%s: neither a cause nor asked after', (_, engine, causes, questions) => {
    const { details } = noise(engine);
    const told = details.noise.candidates.map(({ cause }) => String(cause));
    expect(told.filter((cause) => causes.includes(cause))).toEqual([]);
    expect(told).toContain('lobe');
    const asked = [...details.noise.questions, ...details.noise.checks].map(({ code }) => code);
    expect(asked.filter((code) => questions.includes(code))).toEqual([]);
    expect(asked).toContain('noise-oil');
  });

  test.each<[NonNullable<Evidence['engine']['gear']>, string]>([
    ['pushrod', 'at the lifter'],
    ['bucket', 'at the bucket'],
    ['finger-follower', 'on the cam itself, over nose and base'],
    ['cam-rocker', 'on the cam itself, over nose and base'],
  ])('of a %s the lobe is read %s', (gear, where) => {
    const { checks } = noise({ cylinders: 4, gear, lifter: 'solid-flat' }).details.noise;
    expect(checks.find(({ code }) => code === 'lobe')?.sentence).toContain(`two like it ${where}.`);
  });

  test('what was answered all the same stays with its answer', () => {
    const { details } = noise(
      { gear: 'bucket', lifter: 'solid-flat' },
      { answers: [said('noise-nut', 'held')] },
    );
    expect(details.noise.questions.map(({ code }) => code)).toContain('noise-nut');
  });
});

describe('a nut that held by the answer, and had moved by the log', () => {
  const log = [line('set', 0.018 * IN), line('found', 0.026 * IN, { nut: 'moved' })];
  const both = (answers: AnswerEvidence[]) => noise(PLAIN.engine, { lash: log, answers });
  const first = [said('noise-signs', 'none', 80), said('noise-nut', 'held')];

  test('is asked, and till then neither counts', () => {
    const { questions, details, notToRun } = both(first);
    const asked = questions.find(({ code }) => code === 'nut-told-twice');
    expect(asked?.ask).toBe(
      'The nut of 2 intake held, it was answered; by the lash log it had moved. Which is so?',
    );
    expect(details.noise.facts.filter(({ text }) => /nut had|Nut:/.test(text))).toEqual([]);
    // It may have moved: nobody runs it.
    expect(notToRun.map(({ id }) => id)).toEqual(['not-to-run:noise-nut:log']);
  });

  test('settled, it counts once', () => {
    const [question] = both(first).questions.filter(({ code }) => code === 'nut-told-twice');
    const answer = { ...said('nut-told-twice', 'moved', 95), questionId: question?.id ?? '' };
    const { details } = both([...first, answer]);
    const [lead] = details.noise.candidates;
    expect(lead?.cause).toBe('nut-lock');
    expect(lead?.against).toEqual([]);
  });
});

describe('what is done at once under a stop is of what was found', () => {
  test.each([
    ['metal', /keep the oil and the filter/],
    ['tight', /where it went tight/],
    ['contact', /what hit or bent/],
    ['broken', /count the pieces/],
  ])('%s', (answer, pattern) => {
    const { next } = noise(PLAIN.engine, { answers: [said('noise-signs', answer)] });
    expect(next?.sentence).toMatch(pattern);
    if (answer !== 'metal') expect(next?.sentence).not.toMatch(/filter/);
  });
});

describe('shims of buckets', () => {
  const bucket = (found: number, stock: readonly number[] = []) =>
    assess({
      ...PLAIN,
      call: { ...PLAIN.call, goal: 'adjuster', units: 'metric' },
      engine: { cylinders: 4, gear: 'bucket', lifter: 'solid-flat', shimStock: stock.map((mm) => mm * MM) },
      card: { lashAt: 'cold', intake: { lash: 0.2 * MM }, exhaust: {} },
      lash: [line('found', found * MM, { shim: 2.6 * MM })],
    });
  const shim = ({ details }: ReturnType<typeof assess>) => details.lash.shims.rows[0]?.sentence;

  test('by hand: 2.60 + .15 − .20 is 2.55; with none there it is ordered, and one order is given', () => {
    const told = bucket(0.15);
    expect(shim(told)).toMatch(/It wants 2\.55 mm for its 2\.60 mm; .* one is to be ordered\.$/);
    expect(shim(told)).not.toMatch(/stays/);
    expect(shim(bucket(0.15, [2.55]))).toMatch(
      /2\.55 mm from stock goes in for its 2\.60 mm, which leaves 0\.20 mm/,
    );
    expect(shim(bucket(0.2))).toMatch(/Its own 2\.60 mm shim stays/);
  });

  test('no gap is none to work with: the valve may be held open', () => {
    const none = bucket(0);
    expect(shim(none)).toMatch(/no gap found, so the valve may be held off its seat/);
    expect(none.quantities.filter(({ id }) => id.startsWith('shim:'))).toEqual([]);
    expect(none.next?.sentence).toMatch(/thinner shim goes in first/);
  });
});
