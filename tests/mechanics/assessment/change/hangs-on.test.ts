import { describe, expect, test } from 'vitest';
import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import type { Evidence, SheetEvidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { need } from '../../../../server/mechanics/assessment/missing/need.ts';
import { endingNext } from '../../../../server/mechanics/assessment/next/ending-next.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';
import { PLAIN, read } from '../plain-build.ts';

/* What is asked before parts are changed, and what is said at the end. Limits of the playbook (common practice). */
const ARM = { id: 'new', name: 'new', ratioStamp: '1.7', otherNumber: '', boxLabel: '' };
const build = (sheet: readonly SheetEvidence[], more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'clearances-after-a-change' },
  card: { assumedRatio: 1.5, intake: { lobeLift: 0.34 * IN, lash: 0.016 * IN }, exhaust: {} },
  springs: {},
  rockers: { soldAs: 1.5, planned: 1.7 },
  arms: [ARM],
  seats: [{ cylinder: 1, valve: 'intake', armId: 'new' }],
  sheet,
  ...more,
});
const nextOf = (evidence: Evidence) => assess(evidence).next?.action;
const answering = (evidence: Evidence, code: string, answer: string): Evidence => {
  const { id = '', ask = '' } = assess(evidence).questions.find((each) => each.code === code) ?? {};
  return { ...evidence, answers: [{ id: 'a', line: 9, questionId: id, code, question: ask, answer }] };
};

describe('parts that are not to be fitted, and an open question that may take that away', () => {
  // .080 read; with the old arm .080 − .340 × .2 = .012 of .050 is left, with the new one it is .080 itself.
  const seal = read(1, 'intake', 'retainer-to-seal', 0.08, { putOnLater: 'new', armId: 'new' });

  test('with which arm it was read is asked first', () => {
    const { next, questions, notToRun } = assess(build([seal]));
    expect(next?.action).toBe('gap-arms-then');
    expect(questions[0]).toMatchObject({ code: 'gap-arms-then', weight: 'strong', isNext: true });
    expect(notToRun.map(({ what }) => what)).toEqual(['fit']);
  });

  test('answered, it is one or the other', () => {
    const before = answering(build([seal]), 'gap-arms-then', 'arms-before');
    expect(nextOf(before)).toBe('do-not-fit');
    const same = assess(answering(build([seal]), 'gap-arms-then', 'same-arms'));
    expect(same.notToRun).toEqual([]);
    expect(same.judgements.find(({ id }) => id === 'gap:retainer-to-seal:1-intake')?.word).toBe('clear');
  });

  test('what is short whatever is answered is said first', () => {
    // 1.700 − 1.160 − (.340 × 1.7 − .016) < 0, with 1.5 .046 is left.
    const springs = { installedHeight: 1.7 * IN, solidHeight: 1.16 * IN };
    expect(nextOf(build([seal], { springs }))).toBe('do-not-fit');
  });

  test('heights by which the springs bind with the old arms already are looked at first', () => {
    // 1.700 − 1.260 − .494 < 0.
    const springs = { installedHeight: 1.7 * IN, solidHeight: 1.26 * IN };
    expect(nextOf(build([], { springs }))).toBe('springs-bind-already');
    const looked = build([], { springs });
    expect(nextOf(answering(looked, 'springs-bind-already', 'not-found'))).toBe('do-not-fit');
  });
});

test('a question that two plans raise is hung on once', () => {
  // .065 read; 1.750 − 1.160 − (.340 × 1.5 − .016) = .096 calculated, and .062 and .028 with the plans.
  const springs = { installedHeight: 1.75 * IN, solidHeight: 1.16 * IN };
  const rockers = { soldAs: 1.5, planned: 1.6, alsoPlanned: [1.7] };
  const sheet = [read(2, 'intake', 'coil-bind', 0.16)];
  const { notToRun } = assess(build(sheet, { springs, rockers, arms: [], seats: [] }));
  const hung = notToRun.map(({ hangsOn = [] }) => hangsOn).filter(({ length }) => length > 0);
  expect(hung.length).toBeGreaterThan(0);
  for (const ids of hung) expect(ids).toEqual([...new Set(ids)]);
});

test('at the end the gaps that nothing is known of are said with the answer, however long the rest is', () => {
  const headline = (id: string, sentence: string) =>
    ({ id, about: { of: 'build' }, step: 'consequences', sentence }) as const;
  const given = {
    atEnd: [
      { step: 'notes', need: need('said', 'what was found', 'Say what was found.', false, { must: true }) },
    ],
    lacking: [],
    headlines: [
      headline('headline:change:worst', `Room to coil bind: clear, ${'and so on '.repeat(20)}.`),
      headline(
        'headline:change:not-known',
        `Not known yet: 16 gaps. The worst: ${'pushrod to head '.repeat(9)}.`,
      ),
    ],
  } as const;
  const all = endingNext({ ...given, ofChange: { notKnown: undefined, notMeasured: undefined } });
  expect(all?.reason).toBe('Everything that the answer needs is there.');
  const notKnown = '16 gaps, the worst of them pushrod to head';
  const part = endingNext({ ...given, ofChange: { notKnown, notMeasured: undefined } });
  for (const said of [part?.sentence, part?.besideAnswer, part?.sentenceAtBench, part?.besideAnswerAtBench])
    expect(said).toContain('Not known yet: 16 gaps, the worst of them pushrod to head.');
  expect(part?.reason).not.toMatch(/everything/i);
});
