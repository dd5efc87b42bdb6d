import { describe, expect, test } from 'vitest';
import setting from '../../../seeds/setting.json' with { type: 'json' };
import { adviceOf } from '../../../server/mechanics/tip-mark/advice.ts';
import type { Advice } from '../../../server/mechanics/tip-mark/advice-types.ts';
import { lengthSaid, toldOver } from '../../../server/mechanics/tip-mark/length-said.ts';
import { markInShort, markQuestions } from '../../../server/mechanics/tip-mark/mark-questions.ts';
import { pivotErrorOf } from '../../../server/mechanics/tip-mark/pivot-error.ts';
import type { Mark, MarkContext } from '../../../server/mechanics/tip-mark/types.ts';
import { expectNear } from '../helpers/near.ts';

const IN = 0.0254;
type At = number | 'valley' | 'exhaust' | 'sideways';

/** Width, place (toward the exhaust side positive) and pushrod, in inches. */
function mark(width: number, at: At, pushrod?: number): Mark {
  const side = typeof at === 'string' ? at : at === 0 ? 'centred' : at > 0 ? 'exhaust' : 'valley';
  return {
    width: width * IN,
    side,
    ...(typeof at === 'number' ? { off: Math.abs(at) * IN } : {}),
    ...(pushrod === undefined ? {} : { pushrod: pushrod * IN }),
  };
}
/** Ordinary up to .050 in; an ink line may add .010. */
const STUD: MarkContext = { leastSweep: 0.03 * IN, overLeast: 0.02 * IN, mounting: 'stud', beside: [] };
const inch = (si: number | undefined) => (si === undefined ? '' : ` ${Number((si / IN).toFixed(4))}`);
function said(advice: Advice | undefined): string {
  if (advice?.how === 'contradict') return advice.because;
  if (advice?.how === 'keep' || advice?.how === 'still-wide') return `${advice.how}${inch(advice.at)}`;
  if (advice?.how !== 'change') return advice?.how ?? 'nothing';
  return `${advice.way}${inch(advice.by)}${inch(advice.to)} ${advice.from} ${advice.found}`;
}
/** The last one is the one that is judged. */
const stud = (...marks: Mark[]) => said(adviceOf(marks, STUD));
const asked = (...marks: Mark[]) => markQuestions(marks, STUD)[0];

describe('a pushrod’s length over its ends or by gauge', () => {
  const shorter = setting.pushrodEffective.shorter;

  test('by gauge it is shorter by what the settings table has with its source; and back again', () => {
    expectNear(toldOver(7 * IN, 'ends', 'gauge'), (7 - shorter) * IN);
    expectNear(toldOver(7 * IN, 'gauge', 'ends'), (7 + shorter) * IN);
    expect(toldOver(7 * IN, 'ends', 'ends')).toBe(7 * IN);
    expect(toldOver(7 * IN, 'gauge', 'gauge')).toBe(7 * IN);
  });

  test('it is told both ways where it was told both ways, else as it was', () => {
    const of = (more: Partial<MarkContext>) => lengthSaid(7 * IN, { ...STUD, ...more });
    expect(of({})).toBe('7.000 in');
    expect(of({ bothWays: true })).toBe('7.000 in');
    expect(of({ over: 'ends' })).toBe('7.000 in over its ends');
    expect(of({ over: 'gauge', bothWays: false })).toBe('7.000 in by gauge');
    expect(of({ over: 'ends', bothWays: true })).toBe(
      `7.000 in over its ends, ${(7 - shorter).toFixed(3)} in by gauge`,
    );
    expect(of({ over: 'gauge', bothWays: true })).toBe(
      `7.000 in by gauge, ${(7 + shorter).toFixed(3)} in over its ends`,
    );
  });
});

describe('told from the mark that is judged, which is not the narrowest', () => {
  test('on from the narrowest by .050 (common practice), and so .100 from the one in hand', () => {
    expect(stud(mark(0.07, 0, 7.8), mark(0.085, 0, 7.75))).toBe('up 0.1 7.85 width step');
    expect(stud(mark(0.07, 0, 7.8), mark(0.085, 0, 7.85))).toBe('down 0.1 7.75 width step');
  });

  test('the narrowest is kept though another is in hand', () => {
    expect(stud(mark(0.068, 0, 7.75), mark(0.052, 0, 7.8), mark(0.06, 0, 7.85))).toBe('keep 7.8');
  });

  // Slopes −1.26 and .14 per inch: the parabola is least at 7.820, .045 past 7.775 (by hand).
  test('of one whose length nobody told the way goes from the narrowest', () => {
    const steep = [mark(0.113, 0, 7.75), mark(0.05, 0, 7.8), mark(0.057, 0, 7.85)];
    expect(stud(...steep, mark(0.06, 0))).toBe('up 0.02 7.82 width least');
    const mirrored = [mark(0.057, 0, 7.75), mark(0.05, 0, 7.8), mark(0.113, 0, 7.85)];
    expect(stud(...mirrored, mark(0.06, 0))).toBe('down 0.02 7.78 width least');
  });
});

describe('a steep valley of widths', () => {
  test('bears no length at which the mark is narrower by less than ink shows', () => {
    // Slopes −2.9 and 2.3, 52 per inch²: least at 7.8029, where it is narrower by .0002 alone.
    expect(stud(mark(0.2, 0, 7.75), mark(0.17, 0, 7.85), mark(0.055, 0, 7.8))).toBe('keep 7.8');
  });

  test('is as wide at its bottom as the parabola through the three, by Lagrange’s form', () => {
    const points = [
      { x: 7.75, width: 0.2 },
      { x: 7.8, width: 0.1 },
      { x: 7.85, width: 0.11 },
    ];
    const at = (x: number) =>
      points.reduce((sum, own) => {
        const others = points.filter((other) => other !== own);
        return sum + others.reduce((part, other) => (part * (x - other.x)) / (own.x - other.x), own.width);
      }, 0);
    let bottom = Number.POSITIVE_INFINITY;
    for (let x = 7.75; x <= 7.85; x += 1e-5) bottom = Math.min(bottom, at(x));
    const marks = [mark(0.2, 0, 7.75), mark(0.11, 0, 7.85), mark(0.1, 0, 7.8)];
    const advice = adviceOf(marks, { ...STUD, leastSweep: 0.02 * IN });
    if (advice?.how !== 'still-wide') throw new Error(said(advice));
    expect(advice.width / IN).toBeCloseTo(bottom, 6);
  });
});

describe('a length that was inked, and made it wider, is not tried once more for its place', () => {
  // From −.030 at 7.750 and −.010 at 7.800 the line meets the middle at 7.825 (by hand).
  const toward = (length: number, width: number) =>
    stud(mark(width, 'valley', length), mark(0.05, -0.03, 7.75), mark(0.048, -0.01, 7.8));
  test.each([
    [7.825, 0.062, 'keep'],
    [7.83, 0.062, 'keep'],
    [7.82, 0.062, 'keep'],
    // That very length is on record, and wider than a width is good to: what its mark was is known.
    [7.825, 0.057, 'keep'],
    // As narrow as ink is read, or another length: the place counts.
    [7.83, 0.057, 'up 0.025 7.825 place line'],
    [7.84, 0.062, 'up 0.025 7.825 place line'],
  ])('%d, %d wide: %s', (length, width, wanted) => {
    expect(toward(length, width)).toBe(wanted);
  });

  test('one of which no length was told is none that was tried', () => {
    expect(stud(mark(0.062, 'valley'), mark(0.05, -0.03, 7.75), mark(0.048, -0.01, 7.8))).toBe(
      'up 0.025 7.825 place line',
    );
  });

  test('.005 on the line is a change, and less than half of that is none', () => {
    // −.080 and −.006 over .050: .0041 on from 7.800. −.005 is the middle as far as it can be read.
    expect(stud(mark(0.045, -0.08, 7.75), mark(0.045, -0.006, 7.8))).toBe('up 0.005 7.805 place line');
    expect(stud(mark(0.045, -0.08, 7.75), mark(0.045, -0.005, 7.8))).toBe('keep');
    const known = adviceOf([mark(0.045, -0.03, 7.75), mark(0.045, -0.001, 7.8)], {
      ...STUD,
      leastSweep: undefined,
    });
    expect(said(known)).toBe('width-first');
  });
});

describe('marks of one length of which some have no figure', () => {
  test('the others are still set against each other', () => {
    expect(stud(mark(0.05, -0.06, 7.8), mark(0.05, 'valley', 7.8), mark(0.05, 0.04, 7.8))).toBe(
      'same-setting',
    );
    expect(stud(mark(0.09, 0.03, 7.75), mark(0.09, 'exhaust', 7.75), mark(0.07, 0.01, 7.8))).toBe(
      'moved-back',
    );
  });
});

describe('what the place asks for is told only where it is what is to be done', () => {
  const tooFar = (...marks: Mark[]) => /too (?:short|long)/.exec(asked(...marks)?.size ?? '')?.[0];

  test('width and place the same way', () => {
    expect(tooFar(mark(0.09, -0.05, 7.75), mark(0.07, -0.02, 7.8))).toBe('too short');
    expect(tooFar(mark(0.09, 0.05, 7.8), mark(0.07, 0.02, 7.75))).toBe('too long');
  });

  test('the place the other way', () => {
    expect(tooFar(mark(0.09, -0.01, 7.8), mark(0.07, -0.03, 7.75))).toBeUndefined();
    expect(tooFar(mark(0.09, 0.01, 7.75), mark(0.07, 0.03, 7.8))).toBeUndefined();
  });

  test('where no length mends it', () => {
    const wide = [mark(0.14, -0.05, 7.75), mark(0.12, 0.01, 7.85), mark(0.09, -0.02, 7.8)];
    expect(adviceOf(wide, STUD)?.how).toBe('still-wide');
    expect(tooFar(...wide)).toBeUndefined();
    expect(asked(...wide)?.ask).toMatch(/^Are the heights right/);
  });
});

describe('a question for what is left', () => {
  test('wide at the place that the line asks for', () => {
    const both = [mark(0.075, -0.024, 7.76), mark(0.075, -0.001, 7.8)];
    expect(said(adviceOf(both, STUD))).toBe('both-ways');
    expect(asked(...both)?.ask).toBe('Is the mark over the ordinary because the length is off?');
  });

  test('the narrowest of three lengths is told, and a mark that fits raises nothing', () => {
    const best = [mark(0.068, 0, 7.75), mark(0.06, 0, 7.85), mark(0.052, 0, 7.8)];
    expect(markQuestions(best, STUD).map(({ code }) => code)).toEqual(['mark-wide']);
    expect(asked(...best)?.test).toContain('leave the pushrod at 7.800 in');
    expect(markQuestions([mark(0.045, 0, 7.8)], STUD)).toEqual([]);
  });
});

test('sideways: spacers on a shaft, the guide plate on a stud (common practice, no source)', () => {
  const sideways = [mark(0.045, 'sideways')];
  const shaft: MarkContext = { ...STUD, mounting: 'shaft' };
  const [on] = markQuestions(sideways, shaft);
  expect(on?.code).toBe('mark-sideways');
  expect(on?.ask).toContain('spacers on the shaft');
  expect(on?.test).not.toContain('plate');
  expect(asked(...sideways)?.ask).toContain('guide plate');
  expect(asked(...sideways)?.test).not.toContain('spacers');
  expect(markInShort(sideways, shaft)?.said).toContain('spacers');
  expect(markInShort(sideways, STUD)?.said).toContain('guide plate');
});

test('an arm shorter than half the lift sweeps nothing that is known', () => {
  expect(pivotErrorOf(0.2, 0.5, 0.1)).toBeUndefined();
});
