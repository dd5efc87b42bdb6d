import { describe, expect, test } from 'vitest';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { markInShort, markQuestions } from '../../../server/mechanics/tip-mark/mark-questions.ts';
import type { Mark, MarkContext } from '../../../server/mechanics/tip-mark/types.ts';

/* A roller on 1.450 in with .540 in of net lift: 1.45 − √(1.45² − .54²/4) = .0254 in at the least, by hand. */
const STUD: MarkContext = {
  mounting: 'stud',
  leastSweep: 0.0254 * IN,
  overLeast: 0.02 * IN,
  ordinaryTo: 0.06 * IN,
  beside: [],
};
const mark = (width: number, at: number, pushrod: number): Mark => ({
  width: width * IN,
  side: at === 0 ? 'centred' : at < 0 ? 'valley' : 'exhaust',
  ...(at === 0 ? {} : { off: Math.abs(at) * IN }),
  pushrod: pushrod * IN,
});
const told = (marks: readonly Mark[], more: Partial<MarkContext> = {}) =>
  markInShort(marks, { ...STUD, ...more });
const codes = (marks: readonly Mark[]) => markQuestions(marks, STUD).map(({ code }) => code);

/* A caliper over ink: .005 in either way, common practice, no published source. */
describe('the place of a mark has its own doubt', () => {
  test.each([0.001, 0.002, 0.004, 0.005, -0.002, -0.005])('%d off may stay', (at) => {
    const own = [mark(0.032, at, 7.68)];
    expect(told(own)).toEqual({
      said: 'Centred as far as it can be read: 7.680 in may stay.',
      todo: false,
      turns: false,
    });
    expect(codes(own)).toEqual([]);
  });

  test.each([
    [-0.006, 'too short: try 7.695'],
    [-0.01, 'too short: try 7.705'],
    [0.01, 'too long: try 7.655'],
    [-0.02, 'too short: try 7.730'],
    [-0.06, 'too short: try 7.730'],
  ])('%d off: a first step is no larger than the place asks for', (at, said) => {
    expect(told([mark(0.032, at, 7.68)])?.said).toContain(said);
  });

  test('of two, one that is centred as far as it can be read is the length', () => {
    const pair = [mark(0.032, 0.04, 7.72), mark(0.032, -0.004, 7.68)];
    expect(told(pair)?.said).toBe('Centred as far as it can be read: 7.680 in may stay.');
    expect(codes(pair)).toEqual([]);
  });
});

describe('no length while the width has no word', () => {
  test.each<[string, readonly Mark[]]>([
    ['centred', [mark(0.11, 0, 7.8)]],
    ['two', [mark(0.11, 0, 7.8), mark(0.04, -0.04, 7.7)]],
    ['three, narrowest in the middle', [mark(0.11, 0, 7.8), mark(0.09, 0.03, 7.9), mark(0.04, -0.04, 7.85)]],
  ])('%s', (_what, marks) => {
    const said = told(marks, { leastSweep: undefined });
    expect(said?.said).not.toMatch(/\d\.\d{3} in/);
    expect(said?.said).not.toMatch(/is the length|may stay|Next try/);
  });
});

test('of one mark alone its place says which way, and no more', () => {
  expect(told([mark(0.04, -0.04, 7.7)], { leastSweep: undefined })?.said).toMatch(
    /too short: try 7\.750 in, and ink/,
  );
});

describe('width and place pull apart', () => {
  test('the narrowest is the length, and that it sits off the middle is said', () => {
    const three = [mark(0.075, 0, 7.8), mark(0.035, -0.045, 7.7)];
    expect(told(three)?.said).toMatch(/^7\.700 in is the length: its mark may stay off the middle/);
  });

  test('the way to the middle that makes it wider is not followed further', () => {
    const away = [mark(0.055, 0.01, 7.68), mark(0.04, 0.03, 7.72)];
    expect(told(away)?.said).toMatch(/^7\.720 in is the length: its mark may stay off the middle/);
    // Wider, and still ordinary: then the places count.
    expect(told([mark(0.04, 0.01, 7.68), mark(0.028, 0.03, 7.72)])?.said).toMatch(/Next try 7\.660/);
  });
});
