import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { AnswerEvidence, Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { line, log } from './lash-log.ts';
import { PLAIN } from './plain-build.ts';
import { tipMark } from './tip-mark.ts';

const answerTo = (evidence: Evidence, code: string, answer: string, at: number): AnswerEvidence => {
  const question = assess(evidence).questions.find((each) => each.code === code);
  return { id: 'a', line: at, code, questionId: question?.id ?? '', question: question?.ask ?? '', answer };
};

describe('what was entered wrong, and entered again since', () => {
  const wrong = line(1, '2026-01-10', 0.06, { moment: 'set' });
  const answer = answerTo(log([wrong]), 'lash-unlikely', 'found', 2);
  const said = (lash: Evidence['lash']) => {
    const { questions, headlines, next } = assess({
      ...log(lash),
      call: { ...PLAIN.call, goal: 'adjuster' },
      answers: [answer],
    });
    return {
      codes: questions.map(({ code }) => code),
      text: headlines.map(({ sentence }) => sentence).join(' '),
      next: next?.sentence ?? '',
    };
  };

  test('a lash: nothing more is asked of the first, nor is the second set against it', () => {
    expect(said([wrong]).text).toMatch(/entered wrong/);
    const again = said([wrong, line(3, '2026-01-10', 0.022)]);
    expect(again.text).not.toMatch(/entered wrong|closed/);
    expect(again.codes.filter((code) => code.startsWith('lash-'))).toEqual([]);
    expect(again.next).not.toMatch(/enter that reading again/);
  });

  test('one of another valve, or one that was there before the answer, is not that', () => {
    expect(said([wrong, line(3, '2026-01-10', 0.022, { cylinder: 4 })]).text).toMatch(/entered wrong/);
    expect(said([line(0, '2026-01-09', 0.022), wrong]).text).toMatch(/entered wrong/);
  });

  test('marks that contradict each other: inked again at their settings the new ones count', () => {
    const marks = [
      tipMark('a', 0.035, { side: 'valley', off: 0.01 * IN, pushrod: 7.75 * IN, line: 1 }),
      tipMark('b', 0.035, { side: 'valley', off: 0.04 * IN, pushrod: 7.8 * IN, line: 2 }),
    ];
    const build: Evidence = {
      ...PLAIN,
      rockers: { soldAs: 1.6, pivotToTip: 1.6 * IN },
      card: { ...PLAIN.card, intake: { lobeLift: 0.375 * IN } },
      call: { ...PLAIN.call, goal: 'geometry' },
      tipMarks: marks,
    };
    const misread = answerTo(build, 'length-moves-nothing', 'misread', 5);
    expect(misread.questionId).not.toBe('');
    const again = [
      tipMark('c', 0.035, { side: 'exhaust', off: 0.022 * IN, pushrod: 7.8 * IN, line: 6 }),
      tipMark('d', 0.035, { side: 'exhaust', off: 0.004 * IN, pushrod: 7.75 * IN, line: 7 }),
    ];
    const since = assess({ ...build, tipMarks: [...marks, ...again], answers: [misread] });
    expect(since.headlines.map(({ sentence }) => sentence).join(' ')).toMatch(
      /Centred as far as it can be read: 7\.750 in may stay/,
    );
    expect(since.questions.map(({ code }) => code)).not.toContain('length-moves-nothing');
  });
});
