import { describe, expect, test } from 'vitest';
import { markAdvice, markQuestions } from '../../../server/mechanics/tip-mark/mark-questions.ts';
import type { Mark, MarkContext, Mounting } from '../../../server/mechanics/tip-mark/types.ts';

const IN = 0.0254;

type At = number | 'valley' | 'exhaust' | 'sideways';

/** Width in inches, where its middle is (toward the exhaust side positive), and what it was made with. */
function mark(width: number, at: At, made: { pushrod?: number; shims?: number } = {}): Mark {
  const side = typeof at === 'string' ? at : at === 0 ? 'centred' : at > 0 ? 'exhaust' : 'valley';
  return {
    width: width * IN,
    side,
    ...(typeof at === 'number' ? { off: Math.abs(at) * IN } : {}),
    ...(made.pushrod === undefined ? {} : { pushrod: made.pushrod * IN }),
    ...(made.shims === undefined ? {} : { shims: made.shims * IN }),
  };
}
const rod = (pushrod: number) => ({ pushrod });
const stand = (shims: number) => ({ shims });

/** A least sweep of .030 in, ordinary to .050. */
const on = (mounting: Mounting | undefined, more: Partial<MarkContext> = {}): MarkContext => ({
  leastSweep: 0.03 * IN,
  overLeast: 0.02 * IN,
  mounting,
  beside: [],
  ...more,
});
const unknown = { leastSweep: undefined };
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
      [mark(0.09, -0.05, rod(7.75)), mark(0.07, -0.02, rod(7.8))],
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
      'raise the stands by .050 in, to .080 in of shims. The marks get narrower',
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
      'lower the pedestal by .050 in. The marks get narrower',
    ],
    [
      'both ways on a stud',
      'stud',
      [mark(0.07, 0, rod(7.8))],
      'try .050 longer and .050 shorter, ink both, and keep the narrowest of the three even where it is off centre.',
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

const asked = (mounting: Mounting | undefined, marks: readonly Mark[], more: Partial<MarkContext> = {}) =>
  markQuestions(marks, on(mounting, more));

describe('what is asked', () => {
  test.each([
    ['no marks', undefined, [], {}, []],
    ['centred and ordinary', 'stud', [mark(0.05, 0)], {}, []],
    ['centred and ordinary, mounting not said', undefined, [mark(0.05, 0)], {}, []],
    ['a hair over', 'stud', [mark(0.0501, 0)], {}, ['mark-wide']],
    ['a hair over, mounting not said', undefined, [mark(0.0501, 0)], {}, ['mark-wide']],
    ['off centre, mounting not said', undefined, [mark(0.05, -0.02)], {}, ['mark-off-centre']],
    ['off centre on a stud', 'stud', [mark(0.05, -0.02)], {}, ['mark-off-centre']],
    ['wide and off centre', 'stud', [mark(0.06, -0.02)], {}, ['mark-wide']],
    ['off centre on a shaft is nothing', 'shaft', [mark(0.05, -0.02)], {}, []],
    ['off centre on a shaft, least not known', 'shaft', [mark(0.05, -0.02)], unknown, ['mark-off-centre']],
    ['centred on a shaft, least not known', 'shaft', [mark(0.09, 0)], unknown, []],
    ['at the least', 'stud', [mark(0.03, 0)], {}, []],
    ['under the least', 'stud', [mark(0.0299, 0)], {}, ['mark-narrower-than-least']],
    ['under it, least not known', 'stud', [mark(0.0299, 0)], unknown, []],
    ['sideways', 'stud', [mark(0.04, 'sideways')], {}, ['mark-sideways']],
    ['wide and sideways: no length mends that', 'stud', [mark(0.08, 'sideways')], {}, ['mark-sideways']],
    ['to the very edge: .150 + .025 = .350/2', 'shaft', [mark(0.05, 0.15)], { stem: 0.35 * IN }, []],
    ['over the edge', 'shaft', [mark(0.05, 0.1501)], { stem: 0.35 * IN }, ['mark-at-the-edge']],
    ['as wide as the stem', 'shaft', [mark(0.05, 0)], { stem: 0.05 * IN }, []],
    [
      'wider than the stem, its place told by the side alone',
      'shaft',
      [mark(0.05, 'valley')],
      { stem: 0.0499 * IN },
      ['mark-at-the-edge'],
    ],
    [
      'a length that moves nothing',
      'stud',
      [mark(0.05, -0.01, rod(7.75)), mark(0.05, -0.04, rod(7.8))],
      {},
      ['length-moves-nothing'],
    ],
    [
      'one setting, two marks apart',
      'stud',
      [mark(0.05, -0.06, rod(7.8)), mark(0.05, 0.04, rod(7.8))],
      {},
      ['marks-contradict'],
    ],
  ] as const)('%s', (_what, mounting, marks, more, wanted) => {
    expect(asked(mounting, marks, more).map(({ code }) => code)).toEqual(wanted);
  });

  test.each([
    ['how they are mounted', undefined, [mark(0.05, -0.02)], 'How are the rockers mounted'],
    [
      'a length that is known',
      'stud',
      [mark(0.045, -0.03, rod(7.8))],
      'Would 7.850 in bring the mark to the middle? That is .050 in longer.',
    ],
    [
      'one that is not',
      'stud',
      [mark(0.045, 'exhaust')],
      'Would a pushrod .050 in shorter bring the mark to the middle?',
    ],
    [
      'where the places point',
      'stud',
      [mark(0.05, -0.03, rod(7.75)), mark(0.048, -0.01, rod(7.8))],
      'Would 7.825 in bring the mark to the middle? The marks so far point there.',
    ],
    [
      'by width',
      'stud',
      [mark(0.09, -0.05, rod(7.75)), mark(0.07, -0.02, rod(7.8))],
      'Would 7.850 in make the mark narrower? That is .050 in longer.',
    ],
    ['centred and wide on a stud', 'stud', [mark(0.07, 0)], 'Centred, and still wide'],
    ['centred and wide on a shaft', 'shaft', [mark(0.07, 0)], 'Centred, and still wide'],
    ['wide, off centre, on a shaft', 'shaft', [mark(0.07, 0.02)], 'Is the height of the stands right?'],
    [
      'wide, off centre, on a pedestal',
      'pedestal',
      [mark(0.07, 0.02)],
      'Is the height of the pedestal right?',
    ],
    [
      'two heights on a pedestal',
      'pedestal',
      [mark(0.08, 0.01, stand(0)), mark(0.06, 0.01, stand(0.03))],
      'Is the height of the pedestal right?',
    ],
    [
      'two heights, the mark centred',
      'shaft',
      [mark(0.08, 0, stand(0)), mark(0.06, 0, stand(0.03))],
      'Centred, and still wide',
    ],
    [
      'marks that contradict',
      'stud',
      [mark(0.05, -0.06, rod(7.8)), mark(0.05, 0.04, rod(7.8))],
      'Did anything else change',
    ],
  ] as const)('the question: %s', (_what, mounting, marks, wanted) => {
    expect(asked(mounting, marks)[0]?.ask).toContain(wanted);
  });

  const WIDE = '.070 in: over the least of .030 in by .040 in, where .020 in is allowed.';
  test.each([
    [
      'wide, alone',
      'stud',
      [mark(0.07, 0)],
      {},
      `${WIDE} An ink mark holds the contact line’s own width as well, so one mark alone can’t be called wide.`,
    ],
    [
      'wide, beside a neighbour',
      'stud',
      [mark(0.07, 0)],
      { beside: [mark(0.06, 0), mark(0.044, 0)] },
      `${WIDE} The narrowest one beside it is .044 in.`,
    ],
    [
      'wide, after another',
      'shaft',
      [mark(0.08, 0, stand(0)), mark(0.07, 0, stand(0.03))],
      {},
      `${WIDE} The narrowest one beside it is .080 in.`,
    ],
    [
      'wide and off centre',
      'stud',
      [mark(0.07, 0.02)],
      {},
      `${WIDE} An ink mark holds the contact line’s own width as well, so one mark alone can’t be called wide. Toward the exhaust side: on a stud the pushrod is too long.`,
    ],
    [
      'off centre on a stud',
      'stud',
      [mark(0.045, -0.02)],
      {},
      'Toward the valley: on a stud the pushrod is too short.',
    ],
    ['off centre, mounting not said', undefined, [mark(0.045, -0.02)], {}, 'Toward the valley.'],
    ['the same the other way', undefined, [mark(0.045, 0.02)], {}, 'Toward the exhaust side.'],
    [
      'wide and centred, mounting not said',
      undefined,
      [mark(0.07, 0)],
      {},
      `${WIDE} An ink mark holds the contact line’s own width as well, so one mark alone can’t be called wide.`,
    ],
    [
      'on a shaft',
      'shaft',
      [mark(0.045, -0.02)],
      unknown,
      'Toward the valley. On a shaft the height sets the geometry; the pushrod’s length sets the adjustment.',
    ],
    [
      'centred, contradicting',
      'stud',
      [mark(0.05, 0, rod(7.8)), mark(0.05, 0.03, rod(7.8)), mark(0.05, 0, rod(7.8))],
      {},
      undefined,
    ],
    [
      'the edge',
      'shaft',
      [mark(0.05, 0.16)],
      { stem: 0.35 * IN },
      'Its far side is .185 in from the middle; the stem ends at .175 in.',
    ],
  ] as const)('its size: %s', (_what, mounting, marks, more, wanted) => {
    expect(asked(mounting, marks, more)[0]?.size).toBe(wanted);
  });

  test('a wide mark alone is compared with a neighbour first', () => {
    expect(asked('stud', [mark(0.07, 0)])[0]?.test).toMatch(/^ink a neighbour .* Then try/);
    expect(asked('stud', [mark(0.07, 0)], { beside: [mark(0.05, 0)] })[0]?.test).toMatch(/^try/);
    expect(asked('stud', [mark(0.045, -0.02)])[0]?.test).toMatch(/^lengthen/);
  });
});
