import { describe, expect, test } from 'vitest';
import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';
import { CHANGE, gapOf } from './change-of-arms.ts';

/*
 * Room to coil bind = installed height − net lift − coil-bind height, .060 in wanted (common practice). With the 1.5 that is
 * on 1.650 − (.350 × 1.5 − .016) − 1.150 = −.009; with a 1.6 −.044.
 */
const build = (answers: Evidence['answers'] = [], installed = 1.65): Evidence => ({
  ...CHANGE,
  arms: [],
  springs: { installedHeight: installed * IN, solidHeight: 1.15 * IN },
  answers,
});
const answered = (answer: string) => [
  {
    id: 'said',
    line: 90,
    questionId: questionOf(build())?.id ?? '',
    code: 'springs-bind-already',
    question: 'springs-bind-already',
    answer,
  },
];
const questionOf = (evidence: Evidence) =>
  assess(evidence).questions.find(({ code }) => code === 'springs-bind-already');
const bars = (evidence: Evidence) => assess(evidence).notToRun.map(({ sentence }) => sentence);

describe('springs that bind by their heights before anything is changed', () => {
  test('are asked about in words of which each says what it is', () => {
    expect(questionOf(build())?.answers.map(({ label }) => label)).toEqual([
      'They were read right',
      'One of them was off',
    ]);
  });

  test('read right: what does not fit stays barred, with what is on as well', () => {
    const said = bars(build(answered('not-found')));
    expect(said).toContainEqual(expect.stringMatching(/^Don’t fit the planned 1\.6: room to coil bind/));
    expect(said).toContainEqual(
      expect.stringMatching(
        /^Do not run it with the arms before the change, the 1\.5 they are sold as: room to coil bind/,
      ),
    );
  });

  test('one of them off: nothing that comes out of them bars anything', () => {
    expect(bars(build(answered('found'))).filter((each) => /coil bind/.test(each))).toEqual([]);
  });
});

describe('what is short with the arms that are on is said beside the plan', () => {
  test('1.680: .021 with a 1.5, short at its best; the plan comes out worse', () => {
    const said = bars(build([], 1.68));
    expect(said).toContainEqual(
      expect.stringMatching(/^Do not run it with the arms before the change.*\.021/),
    );
    expect(said).toContainEqual(expect.stringMatching(/^Don’t fit/));
  });

  test('1.850 with room for either: nothing is barred; and of no plan nothing is said of what is off', () => {
    expect(bars(build([], 1.85))).toEqual([]);
    const { planned: _, ...rockers } = CHANGE.rockers;
    const none = { ...build([], 1.68), rockers };
    expect(bars(none).filter((each) => /before the change/.test(each))).toEqual([]);
  });

  test('a ratio is said only of valves that all have it: of others that of the worst', () => {
    const one = {
      ...build([], 1.68),
      arms: [{ id: 'a', name: 'A', ratioStamp: '1.52', otherNumber: '', boxLabel: '' }],
      seats: [{ cylinder: 1, valve: 'exhaust', armId: 'a' }],
      sheet: [gapOf('gap', 'pushrod-to-head', 0.2, { armId: 'a' }, 'exhaust')],
    } as const;
    const before = bars(one).filter((each) => /before the change/.test(each));
    expect(before).toHaveLength(1);
    expect(before[0]).toMatch(
      /^Do not run it with the arms before the change: room to coil bind on 1 exhaust/,
    );
    expect(before[0]).toMatch(/, with the 1\.52 stamped on it of 1 exhaust\.$/);
  });

  test('once under the first plan, however many are thought of', () => {
    const three = { ...build([], 1.68), rockers: { ...CHANGE.rockers, alsoPlanned: [1.65, 1.7] } };
    expect(bars(three).filter((each) => /before the change/.test(each))).toHaveLength(1);
  });
});
