import { describe, expect, test } from 'vitest';
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
function nobodyCan(lash: Evidence['lash'] = TWO, line = 20): AnswerEvidence {
  const [question] = asked(lash);
  if (question === undefined) throw new Error('nothing is asked');
  const { id, ask } = question;
  return {
    id: `answer-${line}`,
    line,
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

describe('beside what was found at other times', () => {
  const on = (line: number, inches: number, more: object = {}) => ({
    ...find(line, inches),
    day: '2026-03-05',
    ...more,
  });
  const EARLIER = find(10, 0.0122);
  const APART = [on(11, 0.01), on(12, 0.014)];
  const lashOf = (lash: Evidence['lash'], answers: readonly AnswerEvidence[]) =>
    said(lash, answers).quantities.find(({ id }) => id === 'lash:5-intake');

  test.each([
    ['on an earlier day', EARLIER],
    ['on a hot engine', on(10, 0.0122, { engine: 'hot' })],
  ] as const)('one more reading is the cure, where it had been found %s as well', (_, first) => {
    const before = [first, ...APART];
    expect(asked(before)[0]?.ask).toContain('.010 in and .014 in');
    const lash = [...before, on(30, 0.0115)];
    const answers = [nobodyCan(before)];
    expect(asked(lash, answers)).toEqual([]);
    expect(lashOf(lash, answers)).toMatchObject({ lacks: [], restsOn: ['lash-30'] });
  });

  test('nobody can say of the next two either: the one after those counts', () => {
    const first = nobodyCan(APART);
    const again = [...APART, on(30, 0.02), on(31, 0.026)];
    const [question] = asked(again, [first]);
    const second = {
      ...first,
      id: 'b',
      line: 40,
      questionId: question?.id ?? '',
      question: question?.ask ?? '',
    };
    expect(asked(again, [first, second])).toHaveLength(1);
    expect(asked([...again, on(50, 0.023)], [first, second])).toEqual([]);
  });

  test('what was put aside says nothing of how the gap grew, and raises no stop', () => {
    const set = (line: number, day: string) => ({ ...find(line, 0.01), moment: 'set' as const, day });
    const apart = [
      { ...find(2, 0.01), day: '2026-02-03' },
      { ...find(3, 0.02), day: '2026-02-03' },
    ];
    const start = [set(1, '2026-02-01'), ...apart];
    const answers = [nobodyCan(start, 5)];
    const since = [...start, { ...find(6, 0.0105), day: '2026-02-03' }];
    const grew = (all: ReturnType<typeof said>) =>
      all.questions.filter(({ code }) => code === 'lash-grew').length + all.stop.length;
    expect(grew(said(since, answers))).toBe(0);
    // Set again, and grown by .006 since: for the first time, as nobody knows that it had grown before.
    const later = [...since, set(7, '2026-02-10'), { ...find(8, 0.016), day: '2026-02-20' }];
    expect(said(later, answers).stop).toEqual([]);
    expect(grew(said(later, answers))).toBe(1);
  });

  test('read once more on an earlier day: what nobody could say of is not the lash of now', () => {
    const answers = [nobodyCan(APART)];
    const lash = [...APART, on(30, 0.0115, { day: '2026-03-04' })];
    expect(lashOf(lash, answers)).toMatchObject({ restsOn: ['lash-30'] });
  });
});
