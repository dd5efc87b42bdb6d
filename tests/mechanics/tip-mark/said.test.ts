import { describe, expect, test } from 'vitest';
import { markAdvice } from '../../../server/mechanics/tip-mark/mark-questions.ts';
import type { Mark, MarkContext, Mounting } from '../../../server/mechanics/tip-mark/types.ts';
import { IN, mark, on, rod, stand } from './mark.ts';

const advice = (mounting: Mounting, marks: readonly Mark[], more: Partial<MarkContext> = {}) =>
  markAdvice(marks, on(mounting, more));

describe('what to do next, in words (directions on a stud: trade press; width first: common practice)', () => {
  test.each([
    [
      'too short',
      'stud',
      [mark(0.045, -0.03, rod(7.8))],
      'lengthen the pushrod by .050 in, to 7.850 in. Toward the valley it wants to be longer, on a stud.',
    ],
    [
      'too long',
      'stud',
      [mark(0.045, 0.03, rod(7.8))],
      'shorten the pushrod by .050 in, to 7.750 in. Toward the exhaust side it wants to be shorter, on a stud.',
    ],
    [
      'a side alone, no length',
      'stud',
      [mark(0.045, 'valley')],
      'lengthen the pushrod by .050 in. Toward the valley it wants to be longer',
    ],
    [
      'where two places point',
      'stud',
      [mark(0.05, -0.03, rod(7.75)), mark(0.048, -0.01, rod(7.8))],
      'lengthen the pushrod by .025 in, to 7.825 in. The places of these marks point there.',
    ],
    [
      'back to where they point',
      'stud',
      [mark(0.05, -0.01, rod(7.8)), mark(0.048, 0.03, rod(7.9))],
      'shorten the pushrod by .075 in, to 7.825 in. The places',
    ],
    [
      'on by width',
      'stud',
      [mark(0.09, 0, rod(7.75)), mark(0.07, 0, rod(7.8))],
      'lengthen the pushrod by .050 in, to 7.850 in. The marks get narrower that way. Then ink again',
    ],
    [
      'back by width, the place against it',
      'stud',
      [mark(0.09, -0.01, rod(7.8)), mark(0.07, -0.03, rod(7.75))],
      'shorten the pushrod by .050 in, to 7.700 in. The marks get narrower that way; its place asks for the other way, and width goes first.',
    ],
    [
      'stands',
      'shaft',
      [mark(0.08, 0, stand(0)), mark(0.06, 0, stand(0.03))],
      'raise the stands by .030 in, to .060 in of shims. The marks get narrower',
    ],
    [
      'to no shims',
      'shaft',
      [mark(0.08, 0, stand(0.1)), mark(0.06, 0, stand(0.05))],
      'lower the stands by .050 in, to .000 in of shims. The marks get narrower',
    ],
    [
      'lower than none',
      'pedestal',
      [mark(0.08, 0, stand(0.04)), mark(0.06, 0, stand(0.01))],
      'lower the pedestal by .030 in. The marks get narrower',
    ],
    [
      'both ways on a stud',
      'stud',
      [mark(0.07, 0, rod(7.8))],
      'try .050 in longer and .050 in shorter, ink both, and keep the narrowest of the three even where it is off centre.',
    ],
    [
      'both ways on a shaft',
      'shaft',
      [mark(0.07, 0)],
      'change the height of the stands by one shim and ink again, with the shims told',
    ],
    ['both ways on a pedestal', 'pedestal', [mark(0.07, 0)], 'change the height of the pedestal by one shim'],
    ['nothing on a stud', 'stud', [mark(0.045, 0)], 'leave the pushrod at this length.'],
    [
      'the one the line meets',
      'stud',
      [mark(0.05, 0.01, rod(7.801)), mark(0.045, -0.0004, rod(7.8)), mark(0.045, -0.0015, rod(7.7995))],
      'leave the pushrod',
    ],
    ['nothing on a shaft, centred', 'shaft', [mark(0.045, 0)], 'leave the height where it stands.'],
    [
      'nothing on a shaft, off centre',
      'shaft',
      [mark(0.045, 0.03)],
      'leave the height where it stands. On a shaft or pedestal where the mark sits says where the pivot stands along the head, not how high.',
    ],
    [
      'contradicting',
      'stud',
      [mark(0.05, -0.06, rod(7.8)), mark(0.05, 0.04, rod(7.8))],
      'these marks contradict each other: two marks made at one setting are more than .020 in apart. Set each one again',
    ],
    [
      'moved back',
      'stud',
      [mark(0.05, -0.01, rod(7.75)), mark(0.05, -0.04, rod(7.8))],
      'contradict each other: a longer pushrod should carry',
    ],
    [
      'no one least',
      'stud',
      [
        mark(0.08, 0, rod(7.7)),
        mark(0.055, 0, rod(7.75)),
        mark(0.08, 0, rod(7.8)),
        mark(0.052, 0, rod(7.85)),
      ],
      'contradict each other: the widths go up and down',
    ],
  ] as const)('%s', (_what, mounting, marks, wanted) => {
    const said = advice(mounting, marks);
    expect(said).toContain(wanted);
    if (wanted.endsWith('.') && said?.startsWith('leave')) expect(said).toBe(wanted);
  });

  test.each([
    ['no marks', 'stud', []],
    ['all sideways', 'stud', [mark(0.05, 'sideways')]],
  ] as const)('%s: nothing', (_what, mounting, marks) => {
    expect(advice(mounting, marks)).toBeUndefined();
  });

  test('a sideways mark last does not hide what the others say', () => {
    expect(advice('stud', [mark(0.045, -0.03, rod(7.8)), mark(0.045, 'sideways', rod(7.8))])).toContain(
      'lengthen',
    );
  });
});

describe('the most that width alone can mean', () => {
  const arms = { arm: 1.45 * IN, lift: 0.55 * IN, ratio: 1.5 };
  test.each([
    ['stud', arms, 'the pushrod is at most .458 in off'],
    ['shaft', arms, 'the height is at most .275 in off'],
    ['shaft', { ...arms, ratio: undefined }, 'the height is at most .275 in off'],
    ['stud', { ...arms, ratio: undefined }, undefined],
    ['stud', { ...arms, arm: undefined }, undefined],
    ['stud', { ...arms, lift: undefined }, undefined],
    ['shaft', {}, undefined],
  ] as const)('on a %s with %j', (mounting, more, wanted) => {
    const said = advice(mounting, [mark(0.1084, 0)], more) ?? '';
    if (wanted === undefined) expect(said).not.toContain('at most');
    else expect(said).toContain(`By its width alone ${wanted}, whichever way`);
  });

  test('a mark as narrow as the height can make it says nothing of the height', () => {
    // .026 in is the least of .550 on 1.45 (trade practice 2.10): .040 is wide of a least of .010 told.
    const said = advice('shaft', [mark(0.0263, 0)], { ...arms, leastSweep: 0.001 * IN, overLeast: 0 });
    expect(said).toContain('one shim');
    expect(said).not.toMatch(/at most \.000/);
  });
});
