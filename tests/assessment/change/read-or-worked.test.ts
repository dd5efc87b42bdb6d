import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence, SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { againstCalculated } from '../../../server/mechanics/assessment/gaps/gap-found-off.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN, read } from '../../mechanics/assessment/plain-build.ts';

/*
 * Gaps that were read beside what is known of them otherwise: lash that may be in one, a calculation that excludes it, one
 * that was short before anything is changed. Limits of the playbook (common practice); figures by hand, engines invented.
 */
const build = (sheet: readonly SheetEvidence[], more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'clearances-after-a-change' },
  card: { assumedRatio: 1.5, intake: { lobeLift: 0.34 * IN, lash: 0.016 * IN }, exhaust: {} },
  springs: {},
  rockers: { soldAs: 1.5 },
  sheet,
  ...more,
});
const word = (evidence: Evidence, id: string) =>
  assess(evidence).judgements.find((each) => each.id === id)?.word;
const asked = (evidence: Evidence, code: string) =>
  assess(evidence).questions.filter((each) => each.code === code);
const answering = (evidence: Evidence, code: string, answer: string): Evidence => {
  const [question] = asked(evidence, code);
  const { id = '', ask = '' } = question ?? {};
  return { ...evidence, answers: [{ id: 'a', line: 9, questionId: id, code, question: ask, answer }] };
};

describe('piston to valve on the sheet, lash not said', () => {
  const PISTON = 'gap:piston-to-valve:1-intake';
  const of = (inches: number, more = {}) => build([read(1, 'intake', 'piston-to-valve', inches, more)]);

  test('.083 with .016 of lash may be .067: close, and asked; at zero lash it is clear', () => {
    expect(word(of(0.083), PISTON)).toBe('close');
    expect(asked(of(0.083), 'gap-lash-not-said')).toHaveLength(1);
    expect(word(answering(of(0.083), 'gap-lash-not-said', 'zero'), PISTON)).toBe('clear');
    expect(word(answering(of(0.083), 'gap-lash-not-said', 'set'), PISTON)).toBe('close');
  });

  test('where the word is the same either way nothing is asked', () => {
    expect(word(of(0.11), PISTON)).toBe('clear');
    expect(asked(of(0.11), 'gap-lash-not-said')).toEqual([]);
    expect(asked(of(0.07), 'gap-lash-not-said')).toEqual([]);
  });

  test('a hydraulic lifter has none, and other gaps are not asked', () => {
    const hydraulic = {
      ...of(0.083, { lifter: 'locked' }),
      engine: { ...PLAIN.engine, lifter: 'hydraulic-roller' },
    } as const;
    expect(word(hydraulic, PISTON)).toBe('clear');
    expect(asked(build([read(1, 'intake', 'coil-bind', 0.063)]), 'gap-lash-not-said')).toEqual([]);
  });

  test('one read with the arms before is asked where the planned one hangs on it: .100 − .011 − .016 = .073', () => {
    const planned = build([read(1, 'intake', 'piston-to-valve', 0.1, { arms: 'before' })], {
      rockers: { soldAs: 1.5, planned: 1.6 },
      taken: { intake: { lobeLiftAtClosest: 0.11 * IN }, exhaust: {} },
    });
    expect(word(planned, PISTON)).toBe('close');
    expect(word(answering(planned, 'gap-lash-not-said', 'zero'), PISTON)).toBe('clear');
  });
});

describe('a gap that comes out as another by calculation', () => {
  // 1.750 − 1.160 − (.340 × 1.5 − .016) = .096 ± .013 on every intake; 1 intake was read .040 or .160.
  const springs = { installedHeight: 1.75 * IN, solidHeight: 1.16 * IN };
  const of = (inches: number) => build([read(1, 'intake', 'coil-bind', inches)], { springs });

  test('read less: asked, and the same figures clear no other valve', () => {
    expect(asked(of(0.065), 'gap-against-calculated').map(({ weight }) => weight)).toEqual(['strong']);
    expect(word(of(0.065), 'gap:coil-bind:intake')).toBeUndefined();
  });

  test('the reading holds: its question is closed, and the same figures still clear no other valve', () => {
    const holds = answering(of(0.065), 'gap-against-calculated', 'not-found');
    expect(asked(holds, 'gap-against-calculated').map(({ answered }) => answered?.answer)).toEqual([
      'not-found',
    ]);
    expect(word(holds, 'gap:coil-bind:1-intake')).toBe('clear');
    expect(word(holds, 'gap:coil-bind:intake')).toBeUndefined();
    expect(assess(holds).next).toMatchObject({ action: 'gap-waits:coil-bind', turns: true });
    expect(assess(holds).next?.sentence).toContain('measured on the engine, or its figures put right');
    // 1.750 − 1.195 − .494 = .061: with the height put right they agree, and are told by what comes out again.
    const right = { ...holds, springs: { ...springs, solidHeight: 1.195 * IN } };
    expect(word(right, 'gap:coil-bind:intake')).toBe('close');
  });

  test('the reading was off: it speaks against no figure any more, and is entered again or struck out', () => {
    const off = answering(of(0.065), 'gap-against-calculated', 'found');
    expect(word(off, 'gap:coil-bind:intake')).toBe('clear');
    const [question] = assess(off).questions.filter(({ code }) => code === 'gap-against-calculated');
    expect(question?.answers.map(({ label }) => label)).toEqual([
      'The reading is off',
      'The reading holds: the figures were gone over',
    ]);
  });

  const READ = 'gap:coil-bind:1-intake';
  const off = (inches: number) => answering(of(inches), 'gap-against-calculated', 'found');

  test('the reading was off: it clears nothing, waits to be read again, and its answer stays in sight', () => {
    for (const figure of [0.065, 0.16]) {
      expect(word(of(figure), READ)).toBe('clear');
      expect(word(off(figure), READ)).toBeUndefined();
      const { headlines, next, judgements } = assess(off(figure));
      expect(judgements.find(({ id }) => id === READ)?.sentence).toMatch(
        /another reading: this one was found off/,
      );
      expect(headlines.map(({ sentence }) => sentence).join()).toMatch(/no word yet on room to coil bind/i);
      expect(next?.action).toBe('gap-waits:coil-bind');
    }
    // The figures were put right since: 1.750 − 1.195 − .494 = .061.
    const agreeing = { ...off(0.065), springs: { ...springs, solidHeight: 1.195 * IN } };
    expect(word(agreeing, READ)).toBeUndefined();
    expect(asked(agreeing, 'gap-against-calculated').map(({ answered }) => answered?.found)).toEqual([true]);
  });

  test('the answer is of that reading: another one counts, and is asked by itself', () => {
    const again = (inches: number) => {
      const before = off(0.16);
      return { ...before, sheet: [...before.sheet, read(1, 'intake', 'coil-bind', inches)] };
    };
    expect(word(again(0.095), READ)).toBe('clear');
    expect(asked(again(0.095), 'gap-against-calculated')).toEqual([]);
    expect(word(again(0.15), READ)).toBe('clear');
    expect(asked(again(0.15), 'gap-against-calculated').map(({ answered }) => answered)).toEqual([undefined]);
  });

  test('a guess says nothing beside a reading, found off or not', () => {
    const guess = read(1, 'intake', 'coil-bind', 0.16, { tool: 'guess' });
    const both = build([guess, read(1, 'intake', 'coil-bind', 0.095)], { springs });
    expect(word(build([guess], { springs }), READ)).toBeUndefined();
    // It is no reading: what a tool told of the same gap stands at once, by common practice, no source.
    expect(word(both, READ)).toBe('clear');
    const { id, ask, code } = againstCalculated(
      { ...guess, kind: 'coil-bind' },
      { weight: 'weak', test: '' },
      [],
    );
    const found = { id: 'a', line: 9, questionId: id, code, question: ask, answer: 'found', found: true };
    expect(word({ ...both, answers: [found] }, READ)).toBe('clear');
  });

  test('what was read short is short all the same', () => {
    expect(word(off(0.04), READ)).toBe('short');
    expect(assess(off(0.04)).stop).toHaveLength(1);
  });

  test('read more: asked, and the others keep their word; alike it is not', () => {
    expect(asked(of(0.16), 'gap-against-calculated').map(({ weight }) => weight)).toEqual(['weak']);
    expect(word(of(0.16), 'gap:coil-bind:intake')).toBe('clear');
    expect(asked(of(0.095), 'gap-against-calculated')).toEqual([]);
  });
});

test('short with the arms before: nobody runs it with those, whatever is planned', () => {
  const evidence = build([read(1, 'exhaust', 'piston-to-valve', 0.055, { arms: 'before' })], {
    rockers: { soldAs: 1.5, planned: 1.6 },
  });
  const { notToRun, stop } = assess(evidence);
  expect(stop).toEqual([]);
  expect(notToRun.map(({ what, sentence }) => [what, sentence])).toContainEqual([
    'run',
    'Do not run it with the arms before: with them piston to valve on 1 exhaust was read short, .055 in ± .002 against .100 in.',
  ]);
});

test('a lobe that stood at its whole lift where they came closest is asked about', () => {
  const at = (inches: number) =>
    asked(
      build([], { taken: { intake: { lobeLiftAtClosest: inches * IN }, exhaust: {} } }),
      'closest-near-full-lift',
    );
  expect(at(0.34)).toHaveLength(1);
  expect(at(0.15)).toEqual([]);
});

test('of a hydraulic lifter a turn is told by the plunger: 1 + 1/1.6 = 1.63 pitches instead of 1.67 (check values 8)', () => {
  const told = assess(
    build([], {
      engine: { ...PLAIN.engine, lifter: 'hydraulic-roller' },
      rockers: { soldAs: 1.5, planned: 1.6 },
    }),
  ).details.change.map(({ adjusters }) => adjusters);
  expect(told[0]).toMatch(
    /the preload it had.*pushes the lifter’s plunger in by 1\.63 pitches.* instead of 1\.67\.$/,
  );
  expect(told.join()).not.toMatch(/gap at the valve/);
});

test('a headline of many gaps that are not clear can be said in one go', () => {
  const kinds = ['pushrod-to-head', 'slot-to-stud', 'rocker-to-retainer', 'cover'] as const;
  const sheet = [1, 3, 5, 7].flatMap((cylinder) =>
    kinds.map((kind, index) => read(cylinder, 'intake', kind, 0.029 + 0.001 * index + 0.001 * cylinder)),
  );
  const evidence = build(sheet, {
    springs: { installedHeight: 1.72 * IN, solidHeight: 1.16 * IN, retainerToSeal: 0.55 * IN },
  });
  const [first] = assess(evidence).headlines;
  expect(first?.sentence.split(' ').length).toBeLessThanOrEqual(80);
  expect(first?.sentence).toMatch(/[Aa]lso (short|close): /);
});
