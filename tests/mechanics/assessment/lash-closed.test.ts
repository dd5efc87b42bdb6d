import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { line, log } from './lash-log.ts';

/* Set at .020 cold, found at .011 cold: .009 less, where .004 is ordinary; common practice, no published source. */
const set = line(1, '2026-01-10', 0.02, { moment: 'set' });
const found = line(2, '2026-02-10', 0.011);
const adjuster = (evidence: Evidence): Evidence => ({
  ...evidence,
  call: { ...evidence.call, goal: 'adjuster' },
});
const said = (evidence: Evidence) => {
  const { questions, headlines, notToRun, next } = assess(adjuster(evidence));
  return {
    questions,
    codes: questions.map(({ code }) => code),
    told: headlines.map(({ sentence }) => sentence).join('\n'),
    stops: notToRun.map(({ sentence }) => sentence).join('\n'),
    next,
  };
};
const answering = (evidence: Evidence, answer: string): Evidence => {
  const question = said(evidence).questions.find(({ code }) => code.startsWith('lash-'));
  return {
    ...evidence,
    answers: [
      {
        id: 'a',
        line: 9,
        code: question?.code ?? '',
        questionId: question?.id ?? '',
        question: question?.ask ?? '',
        answer,
      },
    ],
  };
};

describe('a gap that closed', () => {
  test('at the heat it was set at and with its lock held is told, not asked, and is not set away', () => {
    const { codes, told, stops, next } = said(log([set, found]));
    expect(codes).not.toContain('lash-closed');
    expect(told).toMatch(/closed by \.009 in.*may be sinking into its seat\. Do not set it away/);
    expect(stops).toMatch(/3 exhaust has closed up at one heat/);
    expect(next?.sentence).not.toMatch(/Give thread and turns|enter .* again/);
  });

  test('whose lock nobody looked at asks for the lock, and each answer leads on', () => {
    const open = log([set, { ...found, nut: 'not-looked' }]);
    expect(said(open).codes).toContain('lash-closed-nut');
    expect(said(answering(open, 'held')).told).toMatch(/may be sinking into its seat/);
    expect(said(answering(open, 'moved')).told).toMatch(/moved: its lock is put right/);
    expect(said(answering(open, 'moved')).stops).not.toMatch(/sinking/);
  });

  test('at heats nobody said asks for the heat; at one heat strikes out no true reading', () => {
    const unsaid = log([set, found].map((each) => ({ ...each, engine: 'not-said' as const })));
    expect(said(unsaid).codes).toContain('lash-closed');
    const yes = said(answering(unsaid, 'one-heat'));
    expect(yes.told).toMatch(/may be sinking into its seat/);
    expect(yes.next?.sentence).not.toMatch(/strike/);
    const no = said(answering(unsaid, 'other-heat'));
    expect(no.told).toMatch(/nothing is told of it before it is/);
    expect(no.stops).not.toMatch(/sinking/);
  });

  test('and was set again since is told still; closed within what is ordinary it says nothing', () => {
    const again = log([set, found, line(3, '2026-02-10', 0.02, { moment: 'set' })]);
    expect(said(again).stops).toMatch(/sinking/);
    expect(said(log([set, line(2, '2026-02-10', 0.017)])).told).not.toMatch(/sinking/);
  });
});
