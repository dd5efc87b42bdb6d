import { describe, expect, test } from 'vitest';
import { markQuestions } from '../../../server/mechanics/tip-mark/mark-questions.ts';
import type { Mark, MarkContext, Mounting } from '../../../server/mechanics/tip-mark/types.ts';
import { IN, mark, on, rod, stand } from './mark.ts';

const unknown = { leastSweep: undefined };
const asked = (mounting: Mounting | undefined, marks: readonly Mark[], more: Partial<MarkContext> = {}) =>
  markQuestions(marks, on(mounting, more));

describe('what is asked', () => {
  test.each([
    ['no marks', undefined, [], {}, []],
    ['centred and ordinary', 'stud', [mark(0.05, 0)], {}, []],
    ['centred and ordinary, mounting not said', undefined, [mark(0.05, 0)], {}, []],
    ['a hair over', 'stud', [mark(0.0501, 0)], {}, ['mark-wide']],
    ['a hair over, mounting not said', undefined, [mark(0.0501, 0)], {}, ['mark-mounting']],
    ['off centre, mounting not said', undefined, [mark(0.05, -0.02)], {}, ['mark-mounting']],
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
    [
      'to the very edge: .150 + .025 = .350/2',
      'shaft',
      [mark(0.05, 0.15)],
      { stem: 0.35 * IN },
      ['mark-close-to-edge'],
    ],
    ['over the edge', 'shaft', [mark(0.05, 0.1501)], { stem: 0.35 * IN }, ['mark-at-the-edge']],
    ['as wide as the stem', 'shaft', [mark(0.05, 0)], { stem: 0.05 * IN }, ['mark-close-to-edge']],
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
      [mark(0.09, 0, rod(7.75)), mark(0.07, 0, rod(7.8))],
      'Would 7.850 in make the mark narrower? That is .050 in longer.',
    ],
    ['centred and wide on a stud', 'stud', [mark(0.07, 0)], 'Centred, and over the ordinary'],
    ['centred and wide on a shaft', 'shaft', [mark(0.07, 0)], 'Centred, and over the ordinary'],
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
      'Centred, and over the ordinary',
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
      `${WIDE} The narrowest one beside it is .080 in, wider than this one: it can’t be called wide by that.`,
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
