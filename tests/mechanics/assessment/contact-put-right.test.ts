import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { AnswerEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { said } from './noise-build.ts';
import { PLAIN } from './plain-build.ts';

const told = (...answers: readonly AnswerEvidence[]) => assess({ ...PLAIN, answers });
const isAsked = (...answers: readonly AnswerEvidence[]) =>
  told(...answers).questions.some(({ code }) => code === 'contact-told-otherwise');

/* What the first question of the call denies is asked while it is so; a stop is the desk's to lift. Common practice, no source. */
describe('an answer that was put right takes its question along', () => {
  test.each([
    ['noise-nut', 'moved', 'held'],
    ['noise-nut', 'off', 'held'],
    ['noise-pushrod', 'bent', 'smooth'],
    ['noise-stud', 'moves', 'firm'],
    ['noise-signs', 'tight', 'none'],
    ['noise-signs', 'contact', 'none'],
  ])('%s: %s, then %s', (code, first, then) => {
    expect(isAsked(said(code, first))).toBe(true);
    expect(isAsked(said(code, first), said(code, then, { line: 70 }))).toBe(false);
  });

  test('the stop that it raised stays, and what others told stays asked', () => {
    const right = [said('noise-pushrod', 'bent'), said('noise-pushrod', 'smooth', { line: 70 })];
    expect(told(...right).stop.map(({ code }) => code)).toEqual(['part-damaged']);
    expect(isAsked(...right, said('noise-nut', 'moved', { line: 71 }))).toBe(true);
    // A second sign beside the first puts nothing right.
    expect(isAsked(said('noise-signs', 'tight'), said('noise-signs', 'metal', { line: 70 }))).toBe(true);
  });

  test('told once more, it is asked once more', () => {
    const again = [
      said('noise-pushrod', 'bent'),
      said('noise-pushrod', 'smooth', { line: 70 }),
      said('noise-pushrod', 'bent', { line: 71 }),
    ];
    expect(isAsked(...again)).toBe(true);
  });
});
