import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation as rollerSweep } from '../../../server/mechanics/computations/roller-sweep.ts';
import { adviceOf } from '../../../server/mechanics/tip-mark/advice.ts';
import type { Advice } from '../../../server/mechanics/tip-mark/advice-types.ts';
import { markAdvice, markInShort, markQuestions } from '../../../server/mechanics/tip-mark/mark-questions.ts';
import { pivotErrorOf, sweepOff } from '../../../server/mechanics/tip-mark/pivot-error.ts';
import type { Mark, MarkContext, Mounting } from '../../../server/mechanics/tip-mark/types.ts';
import { IN, mark, rod, stand } from './mark.ts';

/** Least .031 of .600 on 1.48 (desk playbook, call 6), ordinary to .051. */
const on = (mounting: Mounting | undefined, more: Partial<MarkContext> = {}): MarkContext => ({
  leastSweep: 0.0307 * IN,
  overLeast: 0.02 * IN,
  mounting,
  beside: [],
  ...more,
});
const inch = (si: number | undefined) => (si === undefined ? undefined : Number((si / IN).toFixed(4)));

/** `up to 7.85 by place, line` */
function said(advice: Advice | undefined): string {
  if (advice?.how !== 'change')
    return advice?.how === 'contradict' ? advice.because : (advice?.how ?? 'nothing');
  const { way, to, by, from, found, placeAgainst } = advice;
  return `${way} ${inch(by)}${to === undefined ? '' : ` to ${inch(to)}`} by ${from}, ${found}${placeAgainst ? ', place against' : ''}`;
}
/** The judged one goes last: the narrowest. */
const narrowestLast = (marks: readonly Mark[]) => marks.toSorted((a, b) => b.width - a.width);
const stud = (...marks: Mark[]) => said(adviceOf(narrowestLast(marks), on('stud')));
const shaft = (...marks: Mark[]) => said(adviceOf(narrowestLast(marks), on('shaft')));

describe('on a stud', () => {
  test('one mark: by its side, a turn of a checker: too short toward the valley (trade press)', () => {
    expect(stud(mark(0.045, -0.03, rod(7.8)))).toBe('up 0.05 to 7.85 by place, step');
    expect(stud(mark(0.045, 'exhaust', rod(7.8)))).toBe('down 0.05 to 7.75 by place, step');
    expect(stud(mark(0.045, 'valley'))).toBe('up 0.05 by place, step');
    expect(stud(mark(0.045, 0, rod(7.8)))).toBe('keep');
    expect(stud(mark(0.07, 0, rod(7.8)))).toBe('both-ways');
  });

  test('width ordinary: where the line through the places meets the middle', () => {
    // From −.030 at 7.750 and −.010 at 7.800 it meets the middle at 7.825, by hand.
    expect(stud(mark(0.05, -0.03, rod(7.75)), mark(0.048, -0.01, rod(7.8)))).toBe(
      'up 0.025 to 7.825 by place, line',
    );
  });

  test('wide: on from the narrowest, whatever the place asks for; where both ask for one way, to where the places point', () => {
    // −.050 and −.020 over .050: the line meets the middle .033 on, by hand.
    expect(stud(mark(0.09, -0.05, rod(7.75)), mark(0.07, -0.02, rod(7.8)))).toBe(
      'up 0.035 to 7.835 by place, line',
    );
    // .002 of width decides nothing: the same two places lead to the same length.
    expect(stud(mark(0.06, 0.04, rod(7.8)), mark(0.048, 0.015, rod(7.75)))).toBe(
      stud(mark(0.06, 0.04, rod(7.8)), mark(0.05, 0.015, rod(7.75))),
    );
    expect(stud(mark(0.07, -0.03, rod(7.75)), mark(0.09, -0.01, rod(7.8)))).toBe(
      'down 0.05 to 7.7 by width, step, place against',
    );
  });

  const three = (...widths: readonly [number, number, number]) =>
    narrowestLast(widths.map((width, at) => mark(width, 0, rod(7.75 + 0.05 * at))));

  test('three widths: where the parabola through them is least, by hand 7.820', () => {
    // .118, .055, .062 at 7.75, 7.80, 7.85: slopes −1.26 and .14 meet zero .045 after 7.775, where it is .0494 wide.
    expect(stud(...three(0.118, 0.055, 0.062))).toBe('up 0.02 to 7.82 by width, least');
  });

  test('nearer than the widths bear is no other length: the narrowest is the one', () => {
    // .068, .052, .060: the curve is least .008 on, and .005 of ink either way moves that by .010.
    const marks = three(0.068, 0.052, 0.06);
    expect(adviceOf(marks, on('stud'))).toMatchObject({ how: 'keep', best: true });
    expect(markInShort(marks, on('stud'))).toEqual({
      said: '7.800 in is the length: the mark is narrowest there, and the rest may be the ink line’s own width.',
      todo: false,
      turns: false,
    });
    expect(markAdvice(marks, on('stud'))).toMatch(/^leave the pushrod at 7\.800 in.*ink line’s own width/);
  });

  test('narrowest between two others, and still wide: no length mends it', () => {
    // .085, .080, .088: the ordinary is .0507, and an ink line adds .010 at the most.
    for (const marks of [three(0.085, 0.07, 0.08), three(0.085, 0.08, 0.088), three(0.14, 0.09, 0.12)]) {
      expect(adviceOf(marks, on('stud'))?.how).toBe('still-wide');
      expect(markInShort(marks, on('stud'))?.said).toMatch(
        /no length makes it ordinary: look at the heights/,
      );
      expect(markAdvice(marks, on('stud'))).toMatch(/no length makes it ordinary.*stud and its nut/);
    }
    const stands = [0.09, 0.08, 0.095].map((width, at) => mark(width, 0, stand(at * 0.03)));
    expect(markAdvice(narrowestLast(stands), on('shaft'))).toMatch(/no shim makes it ordinary/);
  });

  test('the length and the way to it are told from the mark that is judged', () => {
    // Judged is 7.750, as narrow as ink is read and nearest the middle; the widths go on past 7.800.
    const marks = [mark(0.09, 0.05, rod(7.85)), mark(0.062, 0.03, rod(7.8)), mark(0.065, 0.01, rod(7.75))];
    const advice = adviceOf(marks, on('stud'));
    if (advice?.how === 'change' && advice.to !== undefined)
      expect(Math.abs(advice.to - 7.75 * IN)).toBeCloseTo(advice.by, 9);
  });

  test('one place and what is asked for never speak against each other', () => {
    const marks = [mark(0.085, 0.04, rod(7.85)), mark(0.07, 0.02, rod(7.8)), mark(0.08, -0.01, rod(7.75))];
    for (const order of [marks, marks.toReversed()])
      for (const { size = '', test: todo } of markQuestions(order, on('stud')))
        expect(/too short/.test(size) && /shorten/i.test(todo)).toBe(false);
  });

  test('marks that can’t be of one thing contradict each other', () => {
    expect(stud(mark(0.05, -0.06, rod(7.8)), mark(0.05, 0.04, rod(7.8)))).toBe('same-setting');
    expect(stud(mark(0.08, 0, rod(7.8)), mark(0.05, 0, rod(7.8)))).toBe('same-setting');
    expect(stud(mark(0.05, -0.01, rod(7.75)), mark(0.05, -0.04, rod(7.8)))).toBe('moved-back');
    expect(
      stud(
        mark(0.08, 0, rod(7.7)),
        mark(0.055, 0, rod(7.75)),
        mark(0.08, 0, rod(7.8)),
        mark(0.052, 0, rod(7.85)),
      ),
    ).toBe('no-one-least');
  });

  test('three lengths and more that all move the mark the other way ask what was called valley', () => {
    const marks = [mark(0.05, 0.03, rod(7.7)), mark(0.05, 0, rod(7.75)), mark(0.05, -0.03, rod(7.8))];
    expect(stud(...marks)).toBe('sides-swapped');
    const [asked] = markQuestions(marks, on('stud'));
    expect(asked?.code).toBe('marks-sides-swapped');
    expect(asked?.ask).toMatch(/^Were valley and exhaust side swapped\?/);
    expect(asked?.test).not.toMatch(/contradict|set each/i);
    // One that goes the right way among them is a reading, and no name of a side.
    expect(stud(...marks, mark(0.05, 0.02, rod(7.85)))).toBe('moved-back');
  });

  test('the narrowest is the last of three, and the curve is least before it', () => {
    /*
     * By hand, through .055 at 7.350, .052 at 7.300 and .075 at 7.400: slopes .06 and .40, so that it is least at
     * 7.325 − .06 / (2 × 3.4) = 7.316; and .050 / .047 / .080 of shims 0, .05 and .1 in turn have theirs at .0344.
     */
    const three = [mark(0.075, 0, rod(7.4)), mark(0.055, 0, rod(7.35)), mark(0.052, 0, rod(7.3))];
    expect(stud(...three)).toBe('up 0.015 to 7.315 by width, least');
    expect(shaft(mark(0.08, 0, stand(0.1)), mark(0.055, 0, stand(0.05)), mark(0.052, 0, stand(0)))).toBe(
      'up 0.02 to 0.02 by width, least',
    );
    // Falling steadily it is looked for further on.
    const falling = [mark(0.095, 0, rod(7.4)), mark(0.08, 0, rod(7.35)), mark(0.062, 0, rod(7.3))];
    expect(stud(...falling)).toBe('down 0.05 to 7.25 by width, step');
  });

  test('what a builder reads is one sentence, and one question', () => {
    const marks = narrowestLast([mark(0.09, -0.05, rod(7.75)), mark(0.07, -0.02, rod(7.8))]);
    expect(markAdvice(marks, on('stud'))).toBe(
      'lengthen the pushrod by .035 in, to 7.835 in. The places of these marks point there. Then ink again: same ink, light spring, two turns by hand; send width and place.',
    );
    expect(markQuestions(marks, on('stud')).map(({ code, ask }) => [code, ask])).toEqual([
      ['mark-wide', 'Would 7.835 in bring the mark to the middle? The marks so far point there.'],
    ]);
    const against = [mark(0.05, -0.01, rod(7.75)), mark(0.05, -0.04, rod(7.8))];
    expect(markQuestions(against, on('stud')).map(({ code }) => code)).toEqual(['length-moves-nothing']);
    expect(markAdvice(against, on('stud'))).toMatch(/^these marks contradict each other: a longer pushrod/);
  });
});

describe('on a shaft', () => {
  test('the place says nothing of the height; two heights do', () => {
    expect(shaft(mark(0.045, 0.03, stand(0.03)))).toBe('keep');
    expect(shaft(mark(0.08, 0.03, stand(0.03)))).toBe('both-ways');
    expect(shaft(mark(0.08, 0, stand(0)), mark(0.06, 0, stand(0.03)))).toBe('up 0.03 to 0.06 by width, step');
    expect(shaft(mark(0.06, 0, stand(0)), mark(0.08, 0, stand(0.03)))).toBe(
      'down 0.03 to -0.03 by width, step',
    );
    const lower = markAdvice(
      narrowestLast([mark(0.06, 0, stand(0)), mark(0.08, 0, stand(0.03))]),
      on('shaft'),
    );
    expect(lower).toMatch(/^lower the stands by \.030 in\. The marks get narrower/);
  });

  test('a pushrod’s length on a shaft moves nothing, and without the mounting it is asked', () => {
    expect(shaft(mark(0.08, 0, rod(7.7)), mark(0.06, 0, rod(7.8)))).toBe('both-ways');
    expect(said(adviceOf([mark(0.08, 0)], on(undefined)))).toBe('nothing');
    expect(markQuestions([mark(0.08, 0)], on(undefined))[0]?.ask).toMatch(/^How are the rockers mounted/);
  });
});

describe('how far off the height is, from the width', () => {
  test('set square at one end it is half the lift off: .108, .154, .209 on 1.45 (trade practice 2.10)', () => {
    for (const [lift, quoted] of [
      [0.55, 0.108],
      [0.65, 0.154],
      [0.75, 0.209],
    ] as const) {
      expect(sweepOff(1.45 * IN, lift * IN, (lift / 2) * IN) / IN).toBeCloseTo(quoted, 3);
      expect((pivotErrorOf(1.45 * IN, lift * IN, quoted * IN) ?? 0) / IN).toBeCloseTo(lift / 2, 2);
    }
    expect(pivotErrorOf(1.45 * IN, 0.55 * IN, 0.02 * IN)).toBe(0);
    expect(pivotErrorOf(1.45 * IN, 0.55 * IN, 2 * IN)).toBeUndefined();
  });

  test('against the roller turned through its lift in small steps, at any height', () => {
    const sizes = fc.tuple(
      fc.double({ min: 1.2, max: 1.8, noNaN: true }),
      fc.double({ min: 0.3, max: 0.8, noNaN: true }),
      fc.double({ min: 0, max: 0.5, noNaN: true }),
    );
    fc.assert(
      fc.property(sizes, ([arm, lift, off]) => {
        const across = Array.from({ length: 2001 }, (_, step) => {
          const height = off + lift / 2 - (lift * step) / 2000;
          return arm * Math.cos(Math.asin(height / arm));
        });
        const swept = Math.max(...across) - Math.min(...across);
        expect(sweepOff(arm, lift, off)).toBeCloseTo(swept, 5);
        expect(pivotErrorOf(arm, lift, sweepOff(arm, lift, off)) ?? Number.NaN).toBeCloseTo(off, 4);
      }),
    );
    const least = rollerSweep.compute({ pivotToTip: 1.5, netLift: 0.6, setAt: 'mid-lift' }).leastSweep;
    expect(sweepOff(1.5, 0.6, 0)).toBeCloseTo(least, 12);
  });

  test('is told as the pushrod’s own on a stud: pivot × (1 + 1/ratio)', () => {
    const known = { arm: 1.45 * IN, lift: 0.55 * IN, ratio: 1.5 };
    // .275 × (1 + 1/1.5) = .458 by hand.
    expect(markAdvice([mark(0.1084, 0)], on('stud', known))).toContain('the pushrod is at most .458 in off');
    expect(markAdvice([mark(0.1084, 0)], on('shaft', known))).toContain('the height is at most .275 in off');
  });
});

test('whichever order the marks come in, the advice is the same', () => {
  const made = fc.array(
    fc.tuple(
      fc.integer({ min: 40, max: 110 }),
      fc.integer({ min: -60, max: 60 }),
      fc.integer({ min: 0, max: 5 }),
    ),
    { minLength: 1, maxLength: 5 },
  );
  fc.assert(
    fc.property(made, fc.constantFrom<Mounting>('stud', 'shaft'), (all, mounting) => {
      const marks = narrowestLast(
        all.map(([width, at, step]) =>
          mark(width / 1000, at / 1000, { pushrod: 7.7 + step * 0.05, shims: step * 0.015 }),
        ),
      );
      const judged = marks.at(-1);
      if (judged === undefined) return;
      const others = marks.slice(0, -1);
      expect(said(adviceOf([...others.toReversed(), judged], on(mounting)))).toBe(
        said(adviceOf(marks, on(mounting))),
      );
    }),
  );
});

/* A length that was inked is never told to be tried: what its mark was is known. Common practice, no published source. */
describe('a length on record is not tried once more', () => {
  const circle = [
    mark(0.07, -0.025, rod(7.75)),
    mark(0.054, 0, rod(7.8)),
    mark(0.055, 0, rod(7.8)),
    mark(0.048, 0.01, rod(7.82)),
  ];

  test('in the middle and wider by more than a width is good to: the narrower one stays off the middle', () => {
    expect(adviceOf(circle, on('stud'))).toEqual({ how: 'keep', offCentre: true });
    expect(markInShort(circle, on('stud'))).toMatchObject({ todo: false });
    expect(markInShort(circle, on('stud'))?.said).toMatch(/^7\.820 in is the length/);
  });

  test('in the middle and as narrow: it is the length', () => {
    const marks = [mark(0.07, -0.025, rod(7.75)), mark(0.05, 0.001, rod(7.8)), mark(0.048, 0.01, rod(7.82))];
    expect(adviceOf(marks, on('stud'))).toMatchObject({ how: 'keep', at: 7.8 * IN });
  });

  test('a step to one that sits on the other side goes half the way, to one on this side beyond it', () => {
    expect(stud(mark(0.049, 'exhaust', rod(7.85)), mark(0.045, 'valley', rod(7.8)))).toBe(
      'up 0.025 to 7.825 by place, step',
    );
    expect(stud(mark(0.049, 'valley', rod(7.85)), mark(0.045, 'valley', rod(7.8)))).toBe(
      'up 0.1 to 7.9 by place, step',
    );
  });

  test('both ways, one of which was inked, is the other way', () => {
    const marks = [mark(0.062, 0, rod(7.85)), mark(0.061, 0, rod(7.8))];
    expect(said(adviceOf(marks, on('stud')))).toBe('down 0.05 to 7.75 by width, other-way');
    expect(markAdvice(marks, on('stud'))).toMatch(/The other way was inked, and is as wide\./);
  });

  test('whatever was inked, no length on record is told', () => {
    const places = fc.constantFrom<Mark['side']>('valley', 'exhaust', 'centred');
    const any = fc.record({
      width: fc.integer({ min: 30, max: 90 }),
      off: fc.option(fc.integer({ min: 1, max: 60 }), { nil: undefined }),
      side: places,
      at: fc.integer({ min: 0, max: 12 }),
    });
    fc.assert(
      fc.property(fc.array(any, { minLength: 1, maxLength: 5 }), (drawn) => {
        const marks = drawn.map(({ width, off, side, at }): Mark => {
          const place = side === 'centred' || off === undefined ? side : (side === 'valley' ? -1 : 1) * off;
          return mark(
            width / 1000,
            place === 'centred' ? 0 : typeof place === 'number' ? place / 1000 : place,
            rod(7.7 + at * 0.025),
          );
        });
        const advice = adviceOf(narrowestLast(marks), on('stud'));
        if (advice?.how !== 'change' || advice.to === undefined) return;
        const { to } = advice;
        for (const { pushrod = 0 } of marks) expect(Math.abs(pushrod - to)).toBeGreaterThan(0.0024 * IN);
      }),
    );
  });
});

/* What can't be called wide has no heights looked at for it: one voice; widths as the trade reads ink, from memory. */
test('no mark that can’t be called wide is told that no length makes it ordinary', () => {
  const marks = [mark(0.061, 0.011, rod(7.9)), mark(0.06, -0.022, rod(7.85)), mark(0.058, 0, rod(7.885))];
  const called = { ordinaryTo: 0.06 * IN, leastSweep: 0.027 * IN };
  expect(adviceOf(marks, on('stud', called))).toMatchObject({ how: 'keep', best: true });
  const wide = marks.map((each) => ({ ...each, width: each.width + 0.01 * IN }));
  expect(adviceOf(wide, on('stud', called))?.how).toBe('still-wide');
});
