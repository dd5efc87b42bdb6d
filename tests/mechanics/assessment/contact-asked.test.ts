import { describe, expect, test } from 'vitest';
import type { AnswerEvidence, Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { PLAIN } from './plain-build.ts';

const assess = assessAsTold('contact-asked');

/* The first question of a call against what was found since; who is right a person says. Common practice, no source. */

const said = (code: string, answer: string): AnswerEvidence => ({
  id: `answer-${code}`,
  line: 90,
  code,
  question: code,
  answer,
});
const call = (more: Partial<Evidence['call']>, answers: readonly AnswerEvidence[] = []) =>
  assess({ ...PLAIN, call: { ...PLAIN.call, ...more }, answers });
const asks = ({ questions }: ReturnType<typeof assess>): string[] =>
  questions.flatMap(({ code, ask }) => (code === 'contact-told-otherwise' ? [ask] : []));

describe('nothing hit, bent, tight or loose, it was said', () => {
  test('and nothing says otherwise: not asked', () => {
    expect(asks(call({}))).toEqual([]);
    expect(asks(call({}, [said('noise-signs', 'metal')]))).toEqual([]);
  });

  test.each<[string, Partial<Evidence['call']>, AnswerEvidence[], RegExp]>([
    [
      'a hold stands',
      { hold: { reason: 'It bound up a quarter turn past TDC' } },
      [],
      /yet it bound up a quarter turn past TDC\. Which/,
    ],
    ['a pushrod is bent', {}, [said('noise-pushrod', 'bent')], /yet a pushrod is bent\. Which/],
    ['it turns tight', {}, [said('noise-signs', 'tight')], /yet it turns tight\. Which/],
    ['the nut has moved', {}, [said('noise-nut', 'moved')], /yet the nut has moved\. Which/],
  ])('and yet %s: asked once', (_, more, answers, pattern) => {
    expect(asks(call(more, answers))).toEqual([expect.stringMatching(pattern)]);
  });

  test('something was told: one sentence stops it, with the way out of a shop', () => {
    const reason = 'something hit, bent, came loose or turns tight';
    const { stop } = call({ contact: 'something', hold: { reason } });
    expect(stop.map(({ code }) => code)).toEqual(['contact']);
    // Lifted once and held anew, the hold stands by itself.
    const again = call({ contact: 'something', hold: { reason }, stopsLifted: [{ stopId: 'stop:contact' }] });
    expect(again.stop.map(({ code }) => code)).toEqual(['held']);
  });
});
