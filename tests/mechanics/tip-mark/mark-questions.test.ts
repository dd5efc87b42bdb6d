import { describe, expect, test } from 'vitest';
import { computation as rollerSweep } from '../../../server/mechanics/computations/roller-sweep.ts';
import { markQuestions } from '../../../server/mechanics/tip-mark/mark-questions.ts';
import { nextLength } from '../../../server/mechanics/tip-mark/next-length.ts';
import type { Mark, MarkContext } from '../../../server/mechanics/tip-mark/types.ts';
import { runner } from '../helpers/runner.ts';

const IN = 0.0254;
const { number } = runner(rollerSweep);

/** A mark in inches; toward the exhaust side positive, centred at zero. */
function mark(width: number, at: number, pushrod?: number): Mark {
  const side = at === 0 ? 'centred' : at > 0 ? 'exhaust' : 'valley';
  return {
    width: width * IN,
    side,
    off: Math.abs(at) * IN,
    ...(pushrod === undefined ? {} : { pushrod: pushrod * IN }),
  };
}

/** Desk playbook, call 6: .600 in of lift on an arm of 1.48 has a least sweep of .030, looked at again over .050. */
const LEAST = number(
  { pivotToTip: { value: 1.48, unit: 'in' }, netLift: { value: 0.6, unit: 'in' }, setAt: 'mid-lift' },
  'leastSweep',
);
const context: MarkContext = {
  leastSweep: LEAST * IN,
  overLeast: 0.02 * IN,
  mounting: 'stud',
  beside: [],
};
const codes = (marks: readonly Mark[], more: Partial<MarkContext> = {}) =>
  markQuestions(marks, { ...context, ...more }).map(({ code }) => code);

test('the least sweep is lift²/(8·arm) to the digits it is quoted with: .030, .026, .037, .049', () => {
  expect(LEAST).toBeCloseTo(0.6 ** 2 / (8 * 1.48), 3);
  expect(LEAST.toFixed(3)).toBe('0.031');
  // Trade practice 2.10: an arm of 1.45 gives .026 at .550, .037 at .650, .049 at .750.
  const least = (lift: number) =>
    number(
      { pivotToTip: { value: 1.45, unit: 'in' }, netLift: { value: lift, unit: 'in' }, setAt: 'mid-lift' },
      'leastSweep',
    );
  for (const [lift, quoted] of [
    [0.55, 0.026],
    [0.65, 0.037],
    [0.75, 0.049],
  ] as const)
    expect(Math.abs(least(lift) - quoted)).toBeLessThan(0.001);
});

describe('width goes first', () => {
  test('a narrow centred mark raises nothing', () => {
    expect(codes([mark(0.045, 0)])).toEqual([]);
  });

  test('over the least and .020 it is looked at again, centred or not; at it, it is not', () => {
    const most = LEAST + 0.02;
    expect(codes([mark(most, 0)])).toEqual([]);
    expect(codes([mark(most + 0.0001, 0)])).toEqual(['mark-wide']);
    // Wide and off its middle is one question, not two that may ask for different things.
    expect(codes([mark(0.07, 0.03)])).toEqual(['mark-wide']);
    expect(codes([mark(0.07, 0)], { overLeast: 0.05 * IN })).toEqual([]);
    expect(markQuestions([mark(0.07, 0)], context)[0]?.ask).toMatch(/^Centred, and over the ordinary/);
  });

  test('one mark alone is not called wide before a neighbour is inked; with one beside it that one is named', () => {
    expect(markQuestions([mark(0.07, 0)], context)[0]?.test).toMatch(/^ink a neighbour/);
    const [compared] = markQuestions([mark(0.07, 0)], { ...context, beside: [mark(0.042, 0)] });
    expect(compared?.size).toContain('The narrowest one beside it is .042 in.');
    expect(compared?.test).not.toContain('neighbour');
  });

  test('narrower than a roller can sweep is asked about, and without lift or arm no width is', () => {
    expect(codes([mark(0.02, 0)])).toEqual(['mark-narrower-than-least']);
    const { leastSweep: _, ...unknown } = context;
    expect(markQuestions([mark(0.2, 0)], unknown)).toEqual([]);
  });

  test('past the edge of the stem it is stopped', () => {
    expect(codes([mark(0.04, 0.16)], { stem: 0.342 * IN })[0]).toBe('mark-at-the-edge');
    expect(codes([mark(0.04, 0.1)], { stem: 0.342 * IN })).not.toContain('mark-at-the-edge');
  });
});

describe('then its place, by the mounting', () => {
  test('on a stud toward the valley is too short, toward the exhaust side too long', () => {
    // Trade practice 2.10, two pages read.
    expect(markQuestions([mark(0.045, -0.03, 7.8)], context)[0]?.size).toContain('too short');
    expect(markQuestions([mark(0.045, 0.03, 7.8)], context)[0]?.size).toContain('too long');
    expect(markQuestions([mark(0.045, -0.03, 7.8)], context)[0]?.ask).toBe(
      'Would 7.850 in bring the mark to the middle? That is .050 in longer.',
    );
    expect(markQuestions([mark(0.045, 0.03)], context)[0]?.ask).toBe(
      'Would a pushrod .050 in shorter bring the mark to the middle?',
    );
  });

  test('on a shaft it is the stands, and unknown it is asked', () => {
    const [shaft] = markQuestions([mark(0.07, 0.03, 7.8)], { ...context, mounting: 'shaft' });
    // Of ordinary width the height is right, wherever it sits.
    expect(codes([mark(0.045, 0.03, 7.8)], { mounting: 'shaft' })).toEqual([]);
    expect(shaft?.ask).toBe('Is the height of the stands right?');
    const [unknown] = markQuestions([mark(0.045, 0.03, 7.8)], { ...context, mounting: undefined });
    expect(unknown?.ask).toMatch(/^How are the rockers mounted/);
  });

  test('sideways no length mends', () => {
    const asked = markQuestions(
      [{ width: 0.045 * IN, side: 'sideways', off: 0, pushrod: 7.8 * IN }],
      context,
    );
    expect(asked.map(({ code }) => code)).toEqual(['mark-sideways']);
    expect(asked[0]?.size).toContain('no pushrod length mends that');
  });
});

describe('the next length to try', () => {
  const inch = (marks: readonly Mark[]) => {
    const next = nextLength(marks);
    return next === undefined || next.how === 'against' ? next : Number((next.length / IN).toFixed(4));
  };

  test('two lengths: where the straight line through their marks crosses the middle', () => {
    // By hand: from −.060 at 7.750 to −.020 at 7.800 the mark moves .8 of the change; .020 more takes .025.
    expect(inch([mark(0.08, -0.06, 7.75), mark(0.06, -0.02, 7.8)])).toBe(7.825);
    // Either side of it: −.020 at 7.800, .030 at 7.850; .020/.050 of .050 on from the first.
    expect(inch([mark(0.05, -0.02, 7.8), mark(0.05, 0.03, 7.85)])).toBe(7.82);
  });

  test('is never further than .100 from a length that was tried', () => {
    expect(inch([mark(0.08, -0.061, 7.75), mark(0.08, -0.06, 7.8)])).toBe(7.9);
  });

  test('a second mark at one length takes the place of the first there', () => {
    expect(inch([mark(0.08, 0.06, 7.8), mark(0.08, -0.04, 7.8)])).toBe(7.85);
  });

  test('longer that went toward the valley is asked about', () => {
    const against = [mark(0.08, -0.02, 7.75), mark(0.08, -0.04, 7.8)];
    expect(inch(against)).toEqual({ how: 'against' });
    expect(codes(against)).toContain('length-moves-nothing');
  });

  test('centred, sideways or without a length there is none', () => {
    expect(nextLength([mark(0.05, 0, 7.8)])).toBeUndefined();
    expect(nextLength([mark(0.05, 0.02)])).toBeUndefined();
    expect(nextLength([])).toBeUndefined();
  });
});
