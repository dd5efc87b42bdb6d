import { describe, expect, test } from 'vitest';
import { adviceOf } from '../../../server/mechanics/tip-mark/advice.ts';
import type { Advice } from '../../../server/mechanics/tip-mark/advice-types.ts';
import { alongRocker, nextLength } from '../../../server/mechanics/tip-mark/next-length.ts';
import type { Mark, MarkContext, Mounting } from '../../../server/mechanics/tip-mark/types.ts';

const IN = 0.0254;
type At = number | 'valley' | 'exhaust' | 'sideways';

/** Width, place (toward the exhaust side positive) and what it was made with, in inches. */
function mark(width: number, at: At, setting?: number): Mark {
  const side = typeof at === 'string' ? at : at === 0 ? 'centred' : at > 0 ? 'exhaust' : 'valley';
  return {
    width: width * IN,
    side,
    ...(typeof at === 'number' ? { off: Math.abs(at) * IN } : {}),
    ...(setting === undefined ? {} : { pushrod: setting * IN, shims: setting * IN }),
  };
}
/** A least sweep of .030 in, ordinary to .050. */
const on = (mounting: Mounting, least: number | undefined): MarkContext => ({
  leastSweep: least === undefined ? undefined : least * IN,
  overLeast: 0.02 * IN,
  mounting,
  beside: [],
});
const inch = (si: number | undefined) => (si === undefined ? '' : ` ${Number((si / IN).toFixed(4))}`);
function said(advice: Advice | undefined): string {
  if (advice?.how === 'contradict') return advice.because;
  if (advice?.how !== 'change') return advice?.how ?? 'nothing';
  return `${advice.way}${inch(advice.by)}${inch(advice.to)} ${advice.from}${advice.placeAgainst ? ' against' : ''}`;
}
const stud = (marks: readonly Mark[], least: number | undefined = 0.03) =>
  said(adviceOf(marks, on('stud', least)));

describe('wide marks on a stud, the limits that ink is read to: .010 in, and .020 at one length', () => {
  test.each([
    [
      'back by less than ink is read',
      [mark(0.09, -0.02, 7.75), mark(0.07, -0.0299, 7.8)],
      'up 0.05 7.85 width',
    ],
    ['back by more', [mark(0.09, -0.02, 7.75), mark(0.07, -0.0301, 7.8)], 'moved-back'],
    [
      'the middle of two marks counts: .025, and .016 after it',
      [mark(0.09, 0.02, 7.75), mark(0.09, 0.03, 7.75), mark(0.07, 0.016, 7.8)],
      'up 0.05 7.85 width',
    ],
    ['.014 after it', [mark(0.09, 0.02, 7.75), mark(0.09, 0.03, 7.75), mark(0.07, 0.014, 7.8)], 'moved-back'],
    [
      'a place that is not known is not set against one that is',
      [mark(0.09, 0.05, 7.75), mark(0.07, 'valley', 7.8)],
      'up 0.05 7.85 width',
    ],
    ['nor the other way', [mark(0.09, 'exhaust', 7.75), mark(0.07, -0.05, 7.8)], 'up 0.05 7.85 width'],
    [
      'the narrowest at a length counts',
      [mark(0.09, 0, 7.75), mark(0.084, 0, 7.8), mark(0.072, 0, 7.75)],
      'down 0.05 7.7 width',
    ],
    ['widths at one length .0199 apart', [mark(0.09, 0, 7.8), mark(0.0701, 0, 7.8)], 'both-ways'],
    ['.0201 apart', [mark(0.09, 0, 7.8), mark(0.0699, 0, 7.8)], 'same-setting'],
    ['places at one length .0199 apart', [mark(0.07, 0.0199, 7.8), mark(0.07, 0, 7.8)], 'both-ways'],
    ['.0201 apart', [mark(0.07, 0.0201, 7.8), mark(0.07, 0, 7.8)], 'same-setting'],
    ['lengths .0004 apart are one length', [mark(0.09, 0, 7.8), mark(0.0699, 0, 7.8004)], 'same-setting'],
    ['.0006 apart they are two', [mark(0.09, 0, 7.8), mark(0.0699, 0, 7.8006)], 'up 0.05 7.8506 width'],
    ['widths .0099 apart are one width', [mark(0.0799, 0, 7.76), mark(0.07, 0, 7.8)], 'both-ways'],
    ['.0101 apart', [mark(0.0801, 0, 7.76), mark(0.07, 0, 7.8)], 'up 0.05 7.85 width'],
    [
      'a rise before the least as small as ink is read',
      [mark(0.08, 0, 7.7), mark(0.0899, 0, 7.75), mark(0.06, 0, 7.8)],
      'up 0.05 7.85 width',
    ],
    ['a larger one', [mark(0.08, 0, 7.7), mark(0.0901, 0, 7.75), mark(0.06, 0, 7.8)], 'no-one-least'],
    [
      'a fall after the least as small as that',
      [mark(0.09, 0, 7.75), mark(0.0801, 0, 7.8), mark(0.06, 0, 7.7)],
      'down 0.05 7.65 width',
    ],
    ['a larger one', [mark(0.09, 0, 7.75), mark(0.0799, 0, 7.8), mark(0.06, 0, 7.7)], 'no-one-least'],
  ] as const)('%s', (_what, marks, wanted) => {
    expect(stud(marks)).toBe(wanted);
  });

  test.each([
    // .060 in is what is ordinary and the ink line's own width.
    ['over it: no length makes it ordinary', 0.062, 'still-wide'],
    ['under it: it may be the ink line', 0.0599, 'keep'],
  ])('the narrowest between two alike, %s', (_what, width, wanted) => {
    expect(stud([mark(0.09, 0, 7.75), mark(0.09, 0, 7.85), mark(width, 0, 7.8)])).toBe(wanted);
  });
});

describe('ordinary, or the least not known', () => {
  test.each([
    ['ordinary widths are not followed', 'stud', 0.03, [mark(0.05, 0, 7.75), mark(0.035, 0, 7.8)], 'keep'],
    ['at the limit', 'stud', 0.03, [mark(0.05, 0, 7.8)], 'keep'],
    ['over it', 'stud', 0.03, [mark(0.0501, 0, 7.8)], 'both-ways'],
    ['one that goes by its place', 'stud', 0.03, [mark(0.05, 0.02, 7.8)], 'down 0.05 7.75 place'],
    [
      '.0006 off: the line meets the middle where it is',
      'stud',
      0.03,
      [mark(0.05, -0.03, 7.75), mark(0.05, -0.0006, 7.8)],
      'keep',
    ],
    [
      'places alike at two lengths',
      'stud',
      0.03,
      [mark(0.05, -0.03, 7.75), mark(0.05, -0.03, 7.8)],
      'moved-back',
    ],
    [
      'not known, on a stud: no length',
      'stud',
      undefined,
      [mark(0.05, 0, 7.75), mark(0.035, 0, 7.8)],
      'width-first',
    ],
    [
      'by its place which way, of one alone',
      'stud',
      undefined,
      [mark(0.09, -0.02, 7.8)],
      'up 0.05 7.85 place',
    ],
    ['nothing is wide', 'stud', undefined, [mark(0.3, 0, 7.8)], 'width-first'],
    ['on a shaft off centre: both heights are tried', 'shaft', undefined, [mark(0.05, 0.02)], 'both-ways'],
    ['centred', 'shaft', undefined, [mark(0.05, 0)], 'width-first'],
    ['two heights', 'shaft', undefined, [mark(0.08, 0.02, 0), mark(0.06, 0.02, 0.03)], 'up 0.03 0.06 width'],
    [
      'on a shaft a place that goes back contradicts nothing',
      'shaft',
      undefined,
      [mark(0.08, 0.01, 0), mark(0.06, -0.005, 0.03)],
      'up 0.03 0.06 width',
    ],
  ] as const)('%s', (_what, mounting, least, marks, wanted) => {
    expect(said(adviceOf(marks, on(mounting, least)))).toBe(wanted);
  });
});

test('where a mark is along the rocker', () => {
  const off = 0.001;
  expect(alongRocker({ side: 'centred', off })).toBe(0);
  expect(alongRocker({ side: 'centred' })).toBe(0);
  expect(alongRocker({ side: 'exhaust', off })).toBe(off);
  expect(alongRocker({ side: 'valley', off })).toBe(-off);
  expect(alongRocker({ side: 'sideways', off })).toBeUndefined();
  expect(alongRocker({ side: 'valley' })).toBeUndefined();
});

describe('the length to try next', () => {
  const next = (...marks: Mark[]) => {
    const found = nextLength(marks);
    return found === undefined || found.how === 'against'
      ? found?.how
      : `${found.how}${inch(found.length)}${inch(found.change)}`;
  };
  test.each([
    ['no mark', [], undefined],
    ['centred', [mark(0.05, 0, 7.8)], undefined],
    ['sideways', [mark(0.05, 'sideways', 7.8)], undefined],
    ['its place not told', [mark(0.05, 'valley', 7.8)], undefined],
    ['its length not told', [mark(0.05, -0.02)], undefined],
    ['.0004 off is the middle', [mark(0.05, -0.0004, 7.8)], undefined],
    // Two and a half times its place, and no finer than .005 nor more than .050.
    ['.0006 is not', [mark(0.05, -0.0006, 7.8)], 'step 7.805 0.005'],
    ['.010', [mark(0.05, -0.01, 7.8)], 'step 7.825 0.025'],
    ['too long', [mark(0.05, 0.02, 7.8)], 'step 7.75 -0.05'],
    ['another of the same length', [mark(0.05, -0.03, 7.8004), mark(0.05, -0.02, 7.8)], 'step 7.85 0.05'],
    ['another without a length', [mark(0.05, -0.03), mark(0.05, -0.02, 7.8)], 'step 7.85 0.05'],
    ['another without a place', [mark(0.05, 'valley', 7.75), mark(0.05, -0.02, 7.8)], 'step 7.85 0.05'],
    [
      'two lengths: −.03 and −.01, .050 apart, meet the middle .025 on',
      [mark(0.05, -0.03, 7.75), mark(0.05, -0.01, 7.8)],
      'line 7.825 0.025',
    ],
    [
      'the newest of a length counts',
      [mark(0.05, -0.04, 7.75), mark(0.05, -0.03, 7.75), mark(0.05, -0.01, 7.8)],
      'line 7.825 0.025',
    ],
    ['no further than two steps past', [mark(0.05, -0.031, 7.75), mark(0.05, -0.03, 7.8)], 'line 7.9 0.1'],
    ['no further back than two steps', [mark(0.05, 0.031, 7.8), mark(0.05, 0.03, 7.75)], 'line 7.65 -0.1'],
    ['places alike', [mark(0.05, -0.03, 7.75), mark(0.05, -0.03, 7.8)], 'against'],
    ['the wrong way', [mark(0.05, -0.02, 7.75), mark(0.05, -0.03, 7.8)], 'against'],
  ] as const)('%s', (_what, marks, wanted) => {
    expect(next(...marks)).toBe(wanted);
  });
});
