import { describe, expect, test } from 'vitest';
import { adviceOf } from '../../../server/mechanics/tip-mark/advice.ts';
import { adviceSaid } from '../../../server/mechanics/tip-mark/advice-said.ts';
import { adviceInShort } from '../../../server/mechanics/tip-mark/advice-short.ts';
import type { Advice } from '../../../server/mechanics/tip-mark/advice-types.ts';
import { markInShort, markQuestions } from '../../../server/mechanics/tip-mark/mark-questions.ts';
import type { Mark, MarkContext, Mounting } from '../../../server/mechanics/tip-mark/types.ts';

const IN = 0.0254;

const context = (mounting?: Mounting, more: Partial<MarkContext> = {}): MarkContext => ({
  leastSweep: 0.03 * IN,
  overLeast: 0.02 * IN,
  mounting,
  beside: [],
  ...more,
});
const MARK: Mark = { width: 0.07 * IN, side: 'valley', pushrod: 7.8 * IN, shims: 0.03 * IN };
const BARE: Mark = { width: 0.07 * IN, side: 'valley' };

type Change = Extract<Advice, { how: 'change' }>;
const change = (more: Partial<Change> = {}): Change => ({
  how: 'change',
  way: 'up',
  by: 0.05 * IN,
  found: 'step',
  from: 'width',
  placeAgainst: false,
  ...more,
});
const inShort = (advice: Advice | undefined, mounting?: Mounting, mark = MARK) =>
  adviceInShort(advice, mark, context(mounting));
const said = (...given: Parameters<typeof inShort>) => inShort(...given)?.said;

describe('over the phone: one thing to do', () => {
  test('other heights go up or down, by what the rockers stand on', () => {
    expect(said(change(), 'shaft')).toBe('Next raise the stands by .050 in, and ink again.');
    expect(said(change({ way: 'down' }), 'shaft')).toBe('Next lower the stands by .050 in, and ink again.');
    expect(said(change({ way: 'down' }), 'pedestal')).toBe(
      'Next lower the pedestal by .050 in, and ink again.',
    );
  });

  test('on a stud a length, or how much longer or shorter where none was told', () => {
    expect(said(change({ to: 7.85 * IN }), 'stud')).toBe('Next try 7.850 in, and ink again.');
    expect(said(change(), 'stud')).toBe('Next try .050 in longer, and ink again.');
    expect(said(change({ way: 'down' }), 'stud')).toBe('Next try .050 in shorter, and ink again.');
  });

  test('a first step by place says what is wrong with the length; later ones, and those by width, do not', () => {
    const step = { from: 'place' } as const;
    expect(said(change(step), 'stud')).toBe(
      'On a stud the pushrod is too short: try .050 in longer, and ink again.',
    );
    expect(said(change({ ...step, way: 'down', to: 7.75 * IN }), 'stud')).toBe(
      'On a stud the pushrod is too long: try 7.750 in, and ink again.',
    );
    expect(said(change({ from: 'place', found: 'line' }), 'stud')).toMatch(/^Next try/);
    expect(said(change({ from: 'width', found: 'step' }), 'stud')).toMatch(/^Next try/);
  });

  test('both ways: two lengths, or one shim', () => {
    expect(inShort({ how: 'both-ways' }, 'stud')).toEqual({
      said: 'Try .050 in longer and .050 in shorter, and ink both.',
      todo: true,
      turns: true,
    });
    expect(said({ how: 'both-ways' }, 'shaft')).toMatch(/^Change the height by one shim/);
  });

  test('still wide where it is narrowest: the heights', () => {
    const wide: Advice = { how: 'still-wide', at: 7.8 * IN, width: 0.08 * IN };
    expect(said(wide, 'stud')).toMatch(/^It is narrowest at 7\.800 in, and no length/);
    expect(said(wide, 'pedestal')).toMatch(/^It is narrowest at 7\.800 in of shims, and no shim/);
    expect(inShort(wide, 'stud')?.todo).toBe(true);
  });

  test('what contradicts itself is set and inked again', () => {
    expect(inShort({ how: 'contradict', because: 'same-setting' }, 'stud')).toMatchObject({
      said: expect.stringMatching(/contradict each other/),
      todo: true,
    });
  });

  test('what may stay is nothing to do', () => {
    expect(inShort({ how: 'keep', at: 7.75 * IN }, 'stud')).toEqual({
      said: '7.750 in is the length.',
      todo: false,
      turns: false,
    });
    expect(said({ how: 'keep' }, 'stud')).toBe('7.800 in is the length.');
    expect(said({ how: 'keep' }, 'stud', BARE)).toBe('The pushrod may stay at this length.');
    expect(said({ how: 'keep' }, 'shaft')).toBe(
      'It may stay at .030 in of shims. Measure the pushrod’s length again at that height.',
    );
    expect(said({ how: 'keep', at: 0.06 * IN }, 'shaft')).toMatch(
      /^It may stay at \.060 in of shims\. Measure the pushrod/,
    );
    expect(said({ how: 'keep' }, 'shaft', BARE)).toBe('The height may stay.');
    const best = said({ how: 'keep', at: 7.75 * IN, best: true }, 'stud');
    expect(best).toMatch(/^7\.750 in is the length: the mark is narrowest there/);
    expect(said({ how: 'keep', best: true }, 'shaft')).toMatch(/of shims: the mark is narrowest there/);
  });
});

describe('what goes before any length', () => {
  test('a sideways mark, then one too narrow to be whole, then the mounting', () => {
    const of = (mark: Mark) => markInShort([mark], context());
    expect(of({ ...MARK, side: 'sideways', width: 0.02 * IN })).toMatchObject({
      said: expect.stringMatching(/guide plate/),
      todo: true,
    });
    expect(of({ ...MARK, width: 0.02 * IN })).toMatchObject({
      said: expect.stringMatching(/ink the whole tip/),
      todo: true,
    });
    const unknown = { said: expect.stringMatching(/how the rockers are mounted/), todo: true, turns: false };
    expect(of(MARK)).toMatchObject(unknown);
    expect(adviceInShort(undefined, MARK, context())).toMatchObject(unknown);
    expect(adviceInShort(undefined, MARK, context('stud'))).toBeUndefined();
  });

  test('from the marks themselves: narrower than the least sweep, or not', () => {
    const of = (width: number, more: Partial<MarkContext> = {}) =>
      markInShort([{ width: width * IN, side: 'centred' }], context('stud', more))?.said;
    expect(of(0.02)).toMatch(/ink the whole tip/);
    expect(of(0.04)).toBe('The pushrod may stay at this length.');
    expect(of(0.02, { leastSweep: undefined })).toBe(
      'No length is told: its width has no word yet, and width goes first.',
    );
    expect(markInShort([], context('stud'))).toBeUndefined();
  });
});

describe('the same in full', () => {
  test('where the rocker stands on a stud the pushrod stays at its own length', () => {
    expect(adviceSaid({ how: 'keep' }, MARK, context('stud'))).toBe('leave the pushrod at 7.800 in.');
    expect(adviceSaid({ how: 'keep', at: 7.7 * IN }, MARK, context('stud'))).toBe(
      'leave the pushrod at 7.700 in.',
    );
    expect(adviceSaid({ how: 'keep' }, BARE, context('stud'))).toBe('leave the pushrod at this length.');
    const best = (at?: number): Advice => ({ how: 'keep', best: true, ...(at === undefined ? {} : { at }) });
    expect(adviceSaid(best(), MARK, context('shaft'))).toMatch(/^leave the height where it is: /);
    expect(adviceSaid(best(0.06 * IN), MARK, context('shaft'))).toMatch(
      /^leave the stands at \.060 in of shims: /,
    );
  });

  test('why: by widths that fall that way, or that are least there', () => {
    expect(adviceSaid(change(), MARK, context('stud'))).toContain('The marks get narrower that way.');
    expect(adviceSaid(change({ found: 'least' }), MARK, context('stud'))).toContain(
      'The widths are least there.',
    );
  });
});

describe('on a shaft, from three widths', () => {
  const at = (shims: number, width: number): Mark => ({
    width: width * IN,
    side: 'centred',
    shims: shims * IN,
  });
  /** Slopes −1.5 and .5 of a hundredth meet zero .0375 after .015, where it is narrower than the ordinary .050. */
  const three = [at(0, 0.1), at(0.06, 0.055), at(0.03, 0.055)];

  test('the place between two as narrow, and the way to it from the one judged', () => {
    // (0, .100), (.03, .055), (.06, .055): slopes −1.5 and 0; zero at .015 + 1.5/50 = .045.
    const advice = adviceOf(three, context('shaft'));
    expect(advice).toMatchObject({ how: 'change', way: 'up', found: 'least', placeAgainst: false });
    expect(advice?.how === 'change' ? (advice.to ?? 0) / IN : 0).toBeCloseTo(0.045, 9);
    expect(advice?.how === 'change' ? advice.by / IN : 0).toBeCloseTo(0.015, 9);
    const back = adviceOf([three[0] ?? BARE, three[2] ?? BARE, three[1] ?? BARE], context('shaft'));
    expect(back).toMatchObject({ how: 'change', way: 'down' });
  });

  test('no least sweep known: a place off the middle is tried both ways, of one in the middle the width goes first', () => {
    const one = (side: Mark['side']) =>
      adviceOf([{ ...BARE, side }], context('shaft', { leastSweep: undefined }));
    expect(one('valley')).toEqual({ how: 'both-ways' });
    expect(one('centred')).toEqual({ how: 'width-first' });
    expect(adviceOf([{ width: 0.04 * IN, side: 'valley' }], context('shaft'))).toEqual({ how: 'keep' });
  });

  test('three heights all as wide: no height mends it; two leave one to try', () => {
    const flat = [at(0, 0.08), at(0.03, 0.081), at(0.06, 0.08)];
    expect(adviceOf(flat, context('shaft'))).toMatchObject({ how: 'still-wide' });
    expect(adviceOf(flat.slice(1), context('shaft'))).toEqual({ how: 'both-ways' });
    const ordinary = flat.map((mark) => ({ ...mark, width: mark.width / 2 }));
    expect(adviceOf(ordinary, context('shaft'))).toEqual({ how: 'keep' });
  });
});

describe('one question for all marks', () => {
  const asked = (marks: readonly Mark[], of: MarkContext) => markQuestions(marks, of)[0];

  test('none where nothing is to be changed; one where the narrowest is kept though it is wide', () => {
    expect(markQuestions([{ width: 0.04 * IN, side: 'centred' }], context('stud'))).toEqual([]);
    expect(asked([{ width: 0.07 * IN, side: 'centred' }], context('stud'))?.ask).toBe(
      'Centred, and over the ordinary: is the height right for this lift?',
    );
    expect(asked([BARE], context('shaft'))?.ask).toBe('Is the height of the stands right?');
    expect(asked([BARE], context('pedestal'))?.ask).toBe('Is the height of the pedestal right?');
  });

  test('the last of several marks is the one that is judged', () => {
    const marks: Mark[] = [MARK, { ...MARK, width: 0.02 * IN }, { ...MARK, width: 0.045 * IN }];
    expect(markInShort(marks, context('stud'))?.said).not.toMatch(/whole tip/);
    expect(markInShort(marks.slice(0, 2), context('stud'))?.said).toMatch(/whole tip/);
  });
});
