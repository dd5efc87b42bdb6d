import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { armOf, heard, setUpOn, together, VERIFY } from './whole-sheet.ts';

const A = armOf('Arm A');
/* By hand over the lobe of .3503: .561 is 1.601. Back within .002 in and passes within .002 in: common practice, no source. */
const GOOD = [0.561, 0.561, 0.5605];

const readIn = (...setUps: readonly ReturnType<typeof setUpOn>[]): Evidence => ({
  ...VERIFY,
  arms: [A],
  seats: [{ cylinder: 1, valve: 'intake', armId: A.id }],
  ...together(...setUps),
});

/** Passes of the valve with where the hand stood after each. */
function poorly(lifts: readonly number[], zeros: readonly number[]): ReturnType<typeof setUpOn> {
  const all = setUpOn(1, A.id, lifts);
  return {
    ...all,
    passes: all.passes.map((pass) =>
      pass.kind === 'valve-lift' ? { ...pass, zeroReturn: (zeros[pass.pass - 1] ?? 0) * IN } : pass,
    ),
  };
}

const POOR: readonly [string, readonly number[], readonly number[], string, RegExp][] = [
  [
    'the zero off and the passes wide',
    [0.551, 0.543, 0.537],
    [0.004, 0.004, 0.004],
    'zero-not-returned',
    /its zero came back \.004 in off and its passes lie \.014 in apart/,
  ],
  [
    'the zero off',
    [0.545, 0.545, 0.545],
    [0.004, 0.004, 0.004],
    'zero-not-returned',
    /its zero came back \.004 in off\./,
  ],
  [
    'passes that fall',
    [0.551, 0.543, 0.537],
    [0, 0, 0],
    'drifting-passes',
    /its passes lie \.014 in apart\./,
  ],
  [
    'one of three back at zero',
    [0.545, 0.552, 0.538],
    [0.004, 0, -0.003],
    'zero-not-returned',
    /its zero came back \.004 in off/,
  ],
];

describe('a careless set-up beside a good one of the same arm', () => {
  test.each(POOR)('%s: the good one stands, and one thing is asked', (_, lifts, zeros, code, facts) => {
    for (const order of [
      [setUpOn(1, A.id, GOOD), poorly(lifts, zeros)],
      [setUpOn(2, A.id, GOOD), setUpOn(1, A.id, GOOD), poorly(lifts, zeros)],
    ]) {
      const told = heard(readIn(...order));
      const word = told.all.judgements.find(({ id }) => id.startsWith('ratio:1-intake'));
      expect(word).toMatchObject({ word: 'agrees', lacks: [] });
      expect(word?.sentence).toMatch(facts);
      expect(told.all.questions.map((each) => [each.code, each.weight])).toEqual([[code, 'weak']]);
      expect(told.next).toBe('said');
    }
  });

  test('alone it is doubted as ever', () => {
    const told = heard(readIn(poorly([0.551, 0.543, 0.537], [0.004, 0.004, 0.004])));
    expect(told.all.questions.filter(({ weight }) => weight === 'strong').map(({ code }) => code)).toContain(
      'zero-not-returned',
    );
  });

  test('a second set-up with nothing against its passes still asks which holds', () => {
    const told = heard(readIn(setUpOn(1, A.id, GOOD), setUpOn(1, A.id, [0.526, 0.526, 0.5255])));
    expect(told.asks).toContain('set-ups-differ');
  });
});

describe('one pass beside a set-up of three that it does not come to', () => {
  const isWord = (told: ReturnType<typeof heard>) =>
    told.all.judgements.find(({ id }) => id.startsWith('ratio:1-intake'));

  test('the word stands, and its other passes come before anybody asks which holds', () => {
    const told = heard(readIn(setUpOn(1, A.id, GOOD), setUpOn(1, A.id, [0.573])));
    expect(isWord(told)).toMatchObject({ word: 'agrees', lacks: [] });
    expect(told.asks).not.toContain('set-ups-differ');
    expect(told.next).toMatch(/^valve-passes:|^go-on/);
  });

  test('all three read, it is asked', () => {
    const told = heard(readIn(setUpOn(1, A.id, GOOD), setUpOn(1, A.id, [0.573, 0.573, 0.573])));
    expect(told.asks).toContain('set-ups-differ');
  });

  test('not known how it was read: it is left, with one thing asked of it at most', () => {
    const once = setUpOn(1, A.id, [0.526], {});
    const told = heard(
      readIn(setUpOn(1, A.id, GOOD), {
        ...once,
        setUps: once.setUps.map((each) => ({
          ...each,
          lash: 'not-said' as const,
          lifter: 'not-said' as const,
          restsOn: 'not-said' as const,
          alignment: 'not-said' as const,
        })),
      }),
    );
    expect(isWord(told)).toMatchObject({ word: 'agrees', lacks: [] });
    expect(told.all.questions.length).toBeLessThan(2);
    expect(told.next).toBe('said');
  });
});
