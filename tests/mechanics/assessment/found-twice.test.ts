import { expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { AnswerEvidence, Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { workingsOf } from '../../tools/record/kept-workings.ts';
import { PLAIN } from './plain-build.ts';

/* One gap that was found as two is read once more: common practice, no published source. Figures are invented. */

const find = (line: number, inches: number): Evidence['lash'][number] => ({
  id: `lash-${line}`,
  line,
  standing: true,
  cylinder: 5,
  valve: 'intake',
  gap: { value: inches * IN },
  readAs: `${inches} in`,
  moment: 'found',
  engine: 'cold',
  nut: 'held',
  day: '2026-03-01',
});

const inputs = {
  thread: '7/16-20',
  mount: 'stud-nut',
  ratio: 1.6,
  lifter: 'solid',
  lashFound: '.025 in',
  lashWanted: '.016 in',
};

const said = (lash: Evidence['lash'], answers: readonly AnswerEvidence[] = []) =>
  assess({
    ...PLAIN,
    call: { ...PLAIN.call, goal: 'adjuster' },
    lash,
    answers,
    workings: workingsOf([['adjuster', inputs]]),
  });

const asked = (lash: Evidence['lash'], answers?: readonly AnswerEvidence[]) =>
  said(lash, answers).questions.filter(({ code }) => code === 'found-twice');

const TWO = [find(10, 0.019), find(11, 0.025)];

/** As a page may send it: with a yes or no beside it that the question has no use for. */
function nobodyCan(): AnswerEvidence {
  const [question] = asked(TWO);
  if (question === undefined) throw new Error('nothing is asked');
  const { id, ask } = question;
  return {
    id: 'answer',
    line: 20,
    code: 'found-twice',
    questionId: id,
    question: ask,
    answer: 'neither',
    found: false,
  };
}

test('read twice, it is asked which holds before anybody reads it a third time', () => {
  for (const lash of [TWO, [...TWO, find(30, 0.022)]]) {
    const { next } = said(lash);
    expect(next).toMatchObject({ action: 'found-twice', turns: false });
    expect(next?.sentence).toMatch(/^5 intake: Say which of them holds/);
  }
});

test('read once more after the sum was said to be of another gap: which holds, not the sum once more', () => {
  const [question] = said([find(10, 0.019)]).questions.filter(({ code }) => code === 'sum-against-log');
  if (question === undefined) throw new Error('nothing is asked of the sum');
  const { id, code, ask } = question;
  const answer = { id: 'a', line: 20, code, questionId: id, question: ask, answer: 'found', found: true };
  expect(said([find(10, 0.019)], [answer]).next?.sentence).toContain('work it out again');
  for (const gap of [0.022, 0.025])
    expect(said([find(10, 0.019), find(30, gap)], [answer]).next?.sentence).toContain('Say which of them');
});

test('nobody can say: it is read once more next, and no turn is told', () => {
  const all = said(TWO, [nobodyCan()]);
  expect(all.next).toMatchObject({ action: 'found-twice', sentence: expect.stringContaining('once more') });
  expect(all.headlines.map(({ sentence }) => sentence).join(' ')).not.toMatch(/[Tt]ighten/);
});

test('what was read once more counts alone, and nothing is asked of the first two', () => {
  expect(asked([...TWO, find(30, 0.022)], [nobodyCan()])).toEqual([]);
  expect(asked([...TWO, find(30, 0.022)])).toHaveLength(1);
});

test('read twice since, and apart again, it is asked of those two', () => {
  const [question] = asked([...TWO, find(30, 0.022), find(31, 0.028)], [nobodyCan()]);
  expect(question?.ask).toContain('.022 in and .028 in');
});
