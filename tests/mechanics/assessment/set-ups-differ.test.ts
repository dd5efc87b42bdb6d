import { describe, expect, test } from 'vitest';
import type { AnswerEvidence, Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { armOf, heard, setUpOn, together, VERIFY } from './whole-sheet.ts';

const A = armOf('Arm A');

/*
 * The same arm on the same valve, read twice the same way. By hand over the lobe of .3503: .561 is 1.601, .526 is 1.501.
 * A valve is odd beyond .008 in: common practice, no published source.
 */
const HIGH = [0.561, 0.561, 0.5605];
const LESS = [0.526, 0.526, 0.5255];

const readIn = (...setUps: readonly ReturnType<typeof setUpOn>[]): Evidence => ({
  ...VERIFY,
  arms: [A],
  seats: [{ cylinder: 1, valve: 'intake', armId: A.id }],
  springs: { installedHeight: 1.8 * IN, solidHeight: 1.15 * IN },
  ...together(...setUps),
});

const words = (evidence: Evidence) =>
  Object.fromEntries(heard(evidence).all.judgements.map(({ id, word }) => [id.split(':')[0], word]));

const differs = (evidence: Evidence) =>
  heard(evidence).all.questions.filter(({ code }) => code === 'set-ups-differ');

/** The same with the question answered by the word of one of its choices. */
function answering(evidence: Evidence, at: number): Evidence {
  const [question] = differs(evidence);
  const answer: AnswerEvidence = {
    id: 'a',
    line: 99,
    questionId: question?.id ?? '',
    code: 'set-ups-differ',
    question: '',
    answer: question?.answers[at]?.code ?? '',
  };
  return { ...evidence, answers: [answer] };
}

describe('set-ups of one arm on one valve that come out otherwise', () => {
  test.each([
    ['the higher last', [LESS, HIGH]],
    ['the lower last', [HIGH, LESS]],
  ])(
    '%s: which one holds is asked, no word stands, and a gap is told by the higher',
    (_, [one = [], two = []]) => {
      const evidence = readIn(setUpOn(1, A.id, one), setUpOn(1, A.id, two));
      const { next, all } = heard(evidence);
      expect(next).toBe('set-ups-differ');
      expect(words(evidence).ratio).toBeUndefined();
      const gap = all.judgements.find(({ id }) => id === 'gap:coil-bind:1-intake');
      expect(gap?.word).toBeUndefined();
      expect(gap?.sentence).toMatch(/with the measured 1\.60\d/);
    },
  );

  test('by less than makes a valve odd nothing is asked', () => {
    const near = HIGH.map((lift) => lift - 0.006);
    expect(differs(readIn(setUpOn(1, A.id, HIGH), setUpOn(1, A.id, near)))).toEqual([]);
  });

  test('on two valves, on two springs, or with two arms they are not the same reading', () => {
    const B = armOf('Arm B', { ratioStamp: '1.5' });
    const apart = [
      readIn(setUpOn(1, A.id, HIGH), setUpOn(2, A.id, LESS)),
      readIn(setUpOn(1, A.id, HIGH), setUpOn(1, A.id, LESS, { spring: 'running' })),
      { ...readIn(setUpOn(1, A.id, HIGH), setUpOn(1, B.id, LESS)), arms: [A, B] },
    ];
    expect(apart.flatMap(differs)).toEqual([]);
  });

  test('a third that comes to the same as one of them decides', () => {
    const evidence = readIn(setUpOn(1, A.id, LESS), setUpOn(1, A.id, HIGH), setUpOn(1, A.id, LESS));
    expect(differs(evidence).map(({ weight }) => weight)).toEqual(['weak']);
    expect(heard(evidence).headlines[0]).toMatch(/1\.501 ± .* under the 1\.6/);
  });

  test('each answer does something: one holds, another arm was on, or neither repeats', () => {
    const evidence = readIn(setUpOn(1, A.id, LESS), setUpOn(1, A.id, HIGH));
    const [first, second, arm, both] = [0, 1, 2, 3].map((at) => heard(answering(evidence, at)));
    expect(first?.headlines[0]).toMatch(/1\.501 ± /);
    expect(second?.headlines[0]).toMatch(/1\.601 ± .*agrees with the 1\.6/);
    expect(arm?.sentence).toMatch(/^Ask for 1 intake which arm was on in set-ups \d+ and \d+/);
    expect(both?.sentence).toMatch(/base, lifter and lash looked at/);
  });

  describe('what a person said holds stays on record when a third is read', () => {
    const [high, less] = [setUpOn(1, A.id, HIGH), setUpOn(1, A.id, LESS)];
    const { answers } = answering(readIn(high, less), 0);
    const three = (lifts: readonly number[]): Evidence => ({
      ...readIn(high, less, setUpOn(1, A.id, lifts)),
      answers,
    });

    test('like the one that was put aside: it is asked again, beside what was said, and nothing is turned round', () => {
      const evidence = three(LESS);
      const [open, ...others] = differs(evidence).toSorted(
        (a, b) => Number(a.answered !== undefined) - Number(b.answered !== undefined),
      );
      expect(open?.weight).toBe('strong');
      expect(open?.size).toMatch(/ Of set-ups \d+ and \d+ alone it was said: Set-up \d+ holds, 1\.601\.$/);
      expect(others.map(({ weight, answered }) => [weight, answered?.entryId])).toEqual([['weak', 'a']]);
      expect(heard(evidence).next).toBe('set-ups-differ');
      expect(words(evidence).ratio).toBeUndefined();
    });

    test('like the one that was said to hold: that is borne out', () => {
      const evidence = three(HIGH);
      expect(differs(evidence).map(({ weight }) => weight)).toEqual(['weak']);
      expect(differs(evidence).flatMap(({ answered }) => answered?.entryId ?? [])).toEqual(['a']);
      expect(words(evidence).ratio).toBe('agrees');
    });

    test('answered for all three, that answer counts', () => {
      const evidence = three(LESS);
      const question = differs(evidence).find(({ answered }) => answered === undefined);
      const later = answers.map((answer) => ({
        ...answer,
        id: 'later',
        line: 100,
        questionId: question?.id ?? '',
        answer: question?.answers[1]?.code ?? '',
      }));
      for (const all of [
        [...answers, ...later],
        [...later, ...answers],
      ]) {
        const told = { ...evidence, answers: all };
        expect(heard(told).headlines[0]).toMatch(/1\.501 ± .* under the 1\.6/);
        expect(differs(told).flatMap(({ answered }) => answered?.entryId ?? [])).toEqual(
          expect.arrayContaining(['a', 'later']),
        );
      }
    });
  });

  test('a clean reading of the arm on another valve has its word, whatever is open on the first', () => {
    const evidence = readIn(setUpOn(1, A.id, HIGH), setUpOn(1, A.id, LESS), setUpOn(2, A.id, HIGH));
    const against = heard(evidence).all.judgements.filter(({ id }) => /^ratio:.*:mark$/.test(id));
    expect(against.map(({ id, word }) => [id, word])).toEqual([
      ['ratio:1-intake:arm-Arm A:mark', undefined],
      ['ratio:2-intake:arm-Arm A:mark', 'agrees'],
    ]);
    expect(differs(evidence).map(({ weight }) => weight)).toEqual(['strong']);
    expect(differs(evidence)[0]?.size).toMatch(/ The same arm came out 1\.601 on 2 intake\.$/);
  });

  test('on the running spring they leave the light one its word and its gaps', () => {
    const running = { spring: 'running' } as const;
    const evidence = readIn(
      setUpOn(1, A.id, HIGH),
      setUpOn(1, A.id, [0.545, 0.545, 0.5455], running),
      setUpOn(1, A.id, LESS, running),
    );
    expect(words(evidence)).toMatchObject({ ratio: 'agrees', gap: 'clear' });
    expect(differs(evidence)).toHaveLength(1);
  });

  test('with the lash left in, a reading at zero lash settles it', () => {
    const left = { lash: 'set', lashSetting: 0.016 * IN } as const;
    const less = (lifts: readonly number[]) => lifts.map((lift) => lift - 0.016);
    const evidence = readIn(
      setUpOn(1, A.id, less(HIGH), left),
      setUpOn(1, A.id, less(LESS), left),
      setUpOn(1, A.id, HIGH),
    );
    expect(differs(evidence).map(({ weight }) => weight)).toEqual(['weak']);
    expect(words(evidence).gap).toBe('clear');
  });
});
