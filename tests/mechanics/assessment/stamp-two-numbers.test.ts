import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import { ratioNamedIn, ratiosIn } from '../../../server/mechanics/assessment/common/stamp-read.ts';
import type { AnswerEvidence, Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import type { CountedReading } from '../../../server/mechanics/assessment/part/doubts.ts';
import { stampsApart } from '../../../server/mechanics/assessment/part/marks-apart.ts';
import { ratioStamped } from '../../../server/mechanics/assessment/part/ratio-told.ts';
import { markOn, stampOf } from '../../../server/mechanics/assessment/ratio/claims/stamp.ts';
import { PLAIN } from './plain-build.ts';

/* Common practice, no published source: a mark is told word for word, and nothing is taken out of it by guess. */

const withStamp = (ratioStamp: string, answers: readonly AnswerEvidence[] = []): Evidence => ({
  ...PLAIN,
  arms: [{ id: 'a', name: 'A', ratioStamp, otherNumber: '', boxLabel: '' }],
  answers,
});
const asked = (evidence: Evidence) =>
  assess(evidence).questions.filter(({ code }) => code === 'stamp-two-numbers');

describe('two numbers in one stamp', () => {
  test.each([
    ['1.5 1.6', ['1.5', '1.6']],
    ['1.6/1.5', ['1.6', '1.5']],
    ['1,5 / 1,6', ['1,5', '1,6']],
    ['1.5, 1.6', ['1.5', '1.6']],
    ['1.5 and 1.6', ['1.5', '1.6']],
    ['15 16', ['15', '16']],
    ['1.5,1.6', ['1.5', '1.6']],
    ['1,5,1,6', ['1,5', '1,6']],
    ['1.6-1.5', ['1.6', '1.5']],
    ['16 / 1.5', ['16', '1.5']],
    ['10016-16', []],
    ['1.6 1.6', ['1.6']],
    ['1.6', ['1.6']],
    ['1,6', ['1,6']],
    ['no mark', []],
  ])('%s: %j', (text, wanted) => {
    expect(ratiosIn(text).map((each) => each.text)).toEqual(wanted);
  });

  test.each(['1.5 1.6', '1.6/1.5'])('“%s” is asked which, and not read as one', (text) => {
    const open = withStamp(text);
    expect(stampOf(open, 'a')).toBeUndefined();
    expect(ratioNamedIn(text)).toBeUndefined();
    const [question, ...more] = asked(open);
    expect(more).toEqual([]);
    expect([question?.weight, question?.byLooking, question?.step]).toEqual(['strong', true, 'parts']);
    const say = (answer: string): Evidence =>
      withStamp(text, [
        {
          id: 'x',
          line: 9,
          code: 'stamp-two-numbers',
          questionId: question?.id ?? '',
          question: question?.ask ?? '',
          answer,
        },
      ]);
    const [first, second] = text.split(/[ /]/).map(Number);
    expect(stampOf(say('number-1'), 'a')?.ratio).toBe(first);
    expect(stampOf(say('number-2'), 'a')?.ratio).toBe(second);
    expect(stampOf(say('neither'), 'a')).toBeUndefined();
    expect(asked(say('neither')).map(({ weight }) => weight)).toEqual(['weak']);
  });

  test('a number that was said to be the ratio is not asked about again, with its point or without', () => {
    const [question] = asked(withStamp('16 / 1.5'));
    const said = withStamp('16 / 1.5', [
      {
        id: 'x',
        line: 9,
        code: 'stamp-two-numbers',
        questionId: question?.id ?? '',
        question: question?.ask ?? '',
        answer: 'number-1',
      },
    ]);
    expect(stampOf(said, 'a')).toMatchObject({ ratio: 1.6, dotted: true });
    expect(markOn(said, 'a')).toBe(1.6);
  });

  test('every reader of a mark has the same of it', () => {
    const stamp = (typed: string, id: string): CountedReading => ({
      ...{ id, line: 1, standing: true, kind: 'ratio-stamp' },
      ...{ typed, readAs: typed },
    });
    // “60” is the way in which 1.60 is stamped without its one: beside 1.6 it is no other ratio.
    expect(stampsApart([stamp('60', 'a'), stamp('1.6', 'b')])).toEqual([]);
    expect(stampsApart([stamp('60', 'a'), stamp('1.5', 'b')])).toHaveLength(1);
    // Of two numbers which one it is, is asked first.
    expect(stampsApart([stamp('16 / 1.5', 'a'), stamp('1.6', 'b')])).toEqual([]);
    expect(ratioStamped('16 / 1.5')).toBeUndefined();
    expect(ratioStamped('1.5')).toBe(1.5);
  });

  test('one number is read as it was, and not asked', () => {
    expect(stampOf(withStamp('1.6'), 'a')?.ratio).toBe(1.6);
    expect(asked(withStamp('1.6'))).toEqual([]);
    expect(ratioNamedIn('rockers 1.6, set of 16')).toBe(1.6);
  });

  test('of a loose part it is asked of the part', () => {
    const part: Evidence['part'] = [
      {
        id: 'p',
        line: 1,
        standing: true,
        kind: 'ratio-stamp',
        typed: '1.5 1.6',
        readAs: '1.5 1.6',
      },
    ];
    const questions = asked({ ...PLAIN, part });
    expect(questions.map(({ about, step }) => [about.of, step])).toEqual([['part', 'identify']]);
  });
});
