import { describe, expect, test } from 'vitest';
import type { AssessedQuestion } from '../../../server/mechanics/assessment/assessment.ts';
import type {
  AnswerEvidence,
  Evidence,
  TipMarkEvidence,
} from '../../../server/mechanics/assessment/evidence.ts';
import { MARK_ANSWERS } from '../../../server/mechanics/assessment/marks/answers.ts';
import { marksPart } from '../../../server/mechanics/assessment/marks/marks.ts';
import { withMountingAnswered } from '../../../server/mechanics/assessment/marks/mounting.ts';
import { nextOfMarks } from '../../../server/mechanics/assessment/marks/next-of-marks.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from './plain-build.ts';
import { ARM, RATIO } from './ratio-of-one.ts';
import { tipMark } from './tip-mark.ts';

const told = (tipMarks: readonly TipMarkEvidence[], more: Partial<Evidence> = {}) =>
  marksPart(withMountingAnswered({ ...PLAIN, ...ARM, ...more, tipMarks }), [RATIO]);
const answerTo = (question: AssessedQuestion | undefined, answer: string, line = 10): AnswerEvidence => ({
  id: `answer-${line}`,
  line,
  code: question?.code ?? '',
  questionId: question?.id ?? '',
  question: question?.ask ?? '',
  answer,
});
const nextOf = ({ detail, questions }: ReturnType<typeof told>) => nextOfMarks(detail, questions)?.sentence;
/** What the first question leads on to, answered so, and after another mark. */
function answeredSo(
  marks: readonly TipMarkEvidence[],
  answer: string,
  more: readonly TipMarkEvidence[] = [],
) {
  const [question] = told(marks).questions;
  return told([...marks, ...more], { answers: [answerTo(question, answer)] });
}

/* Least sweep .0284, ordinary to .0484 (check values 8). */
describe('an answer to what is asked of a mark leads on', () => {
  test('every answer says what it changes, and none is the bare yes or no of a reading', () => {
    const every = Object.values(MARK_ANSWERS).flat();
    expect(every.length).toBeGreaterThan(20);
    for (const { label, changes } of every) {
      expect(changes).not.toBe('');
      expect(label).not.toMatch(/^(?:Yes, that is what it was|Looked: it does not fit)$/);
    }
  });

  test('narrower than the arm can sweep: inked whole leads to arm and lift, else it is inked again and counts no more', () => {
    const narrow = [tipMark('n', 0.02)];
    expect(told(narrow).questions.map(({ code }) => code)).toEqual(['mark-narrower-than-least']);
    expect(nextOf(answeredSo(narrow, 'whole'))).toMatch(/read pivot to tip and the lift once more/);
    expect(nextOf(answeredSo(narrow, 'part'))).toMatch(/ink the whole tip/);
    const again = answeredSo(narrow, 'part', [tipMark('m', 0.04, { line: 11 })]);
    expect(again.detail.valves[0]?.judgedId).toBe('m');
    expect(again.questions).toEqual([]);
    // A mark that was there before it was answered is none that was inked since.
    expect(answeredSo(narrow, 'part', [tipMark('m', 0.04, { line: 9 })]).detail.valves[0]?.judgedId).toBe(
      'n',
    );
  });

  test('another length: tried is entered, and what is left as it is ends there', () => {
    const off = [tipMark('o', 0.04, { side: 'valley', off: 0.03 * IN, pushrod: 7.8 * IN })];
    expect(nextOf(told(off))).toMatch(/7\.850/);
    expect(nextOf(answeredSo(off, 'inked'))).toMatch(/enter the mark that was inked/);
    expect(nextOf(answeredSo(off, 'left'))).toBeUndefined();
    const tried = tipMark('p', 0.04, { side: 'valley', off: 0.01 * IN, pushrod: 7.85 * IN, line: 11 });
    const both = answeredSo(off, 'inked', [tried]);
    expect(both.questions.map(({ answered }) => answered)).toEqual([undefined]);
    // From −.030 at 7.800 and −.010 at 7.850 the line meets the middle at 7.875, by hand.
    expect(nextOf(both)).toMatch(/7\.875/);
  });

  test('sideways and lined up since: the new mark counts alone', () => {
    const sideways = [tipMark('s', 0.035, { side: 'sideways', off: 0.03 * IN })];
    expect(nextOf(answeredSo(sideways, 'out-of-line'))).toMatch(/line it up/);
    const since = answeredSo(sideways, 'out-of-line', [tipMark('m', 0.04, { line: 11 })]);
    expect(since.detail.valves[0]?.judgedId).toBe('m');
    expect(since.questions).toEqual([]);
  });

  test('sides that were swapped count the other way round, with nobody typing them again', () => {
    const marks = [
      tipMark('a', 0.04, { pushrod: 7.75 * IN, side: 'exhaust', off: 0.03 * IN, line: 1 }),
      tipMark('b', 0.04, { pushrod: 7.8 * IN, side: 'exhaust', off: 0.01 * IN, line: 2 }),
      tipMark('c', 0.04, { pushrod: 7.85 * IN, side: 'valley', off: 0.01 * IN, line: 3 }),
    ];
    expect(told(marks).questions.map(({ code }) => code)).toEqual(['marks-sides-swapped']);
    expect(nextOf(answeredSo(marks, 'as-told'))).toMatch(/set each length again/);
    const swapped = answeredSo(marks, 'swapped');
    // −.030, −.010 and +.010 at 7.750, 7.800 and 7.850: the middle is at 7.825, by hand.
    expect(nextOf(swapped)).toMatch(/7\.825/);
  });

  test('how they are mounted is asked once for the build, and the answer is gone by', () => {
    const marks = [
      tipMark('a', 0.04, { side: 'valley', off: 0.03 * IN, pushrod: 7.8 * IN }),
      tipMark('b', 0.04, { cylinder: 3, side: 'valley', off: 0.03 * IN, pushrod: 7.8 * IN }),
    ];
    const { mounting: _, ...engine } = PLAIN.engine;
    const open = told(marks, { engine });
    expect(open.questions.map(({ code }) => code)).toEqual(['mark-mounting']);
    expect(open.detail.valves.map(({ questionIds }) => questionIds.length)).toEqual([1, 0]);
    const answers = [answerTo(open.questions[0], 'stud')];
    expect(nextOf(told(marks, { engine, answers }))).toMatch(/7\.850/);
  });

  test('a follower whose heights are right is left as it is', () => {
    const engine = { ...PLAIN.engine, gear: 'finger-follower' as const };
    const marks = [tipMark('f', 0.04, { side: 'valley', off: 0.03 * IN })];
    const [question] = told(marks, { engine }).questions;
    const said = (answer: string) => nextOf(told(marks, { engine, answers: [answerTo(question, answer)] }));
    expect(said('right')).toBeUndefined();
    expect(said('off')).toMatch(/put that height right/);
  });
});

/* The thinnest ordinary stem is 7 mm (seed table): its edge is .1378 in from the middle; that of 11/32 .1719. */
describe('a mark near the edge of a stem that nobody measured', () => {
  const near = tipMark('e', 0.06, { side: 'exhaust', off: 0.12 * IN, pushrod: 7.8 * IN });
  const [asked] = told([near]).questions;
  const answered = (answer: string) => told([near], { answers: [answerTo(asked, answer)] });

  test('asks for the stem, says what goes by it, and tells nothing else', () => {
    expect(asked?.code).toBe('mark-near-the-edge');
    expect(asked?.weight).toBe('strong');
    expect(asked?.size).toMatch(
      /\.150 in from the middle. On a stem of 7 mm it runs off the edge, and on 5\/16, 8 mm, 11\/32 and 3\/8 it stays on/,
    );
    expect(told([near]).stop).toEqual([]);
    expect(told([near]).detail.valves[0]?.first?.said).toMatch(/^Say the diameter of the stem/);
  });

  test('a thin one stops it, a thick one leads on to the length', () => {
    expect(answered('stem-7-mm').stop.map(({ code }) => code)).toEqual(['mark-at-the-edge']);
    expect(answered('stem-11-32').stop).toEqual([]);
    expect(nextOf(answered('stem-11-32'))).toMatch(/7\.750/);
  });

  test('one that is far from any edge, or whose stem is told, is not asked', () => {
    const codes = (mark: TipMarkEvidence) => told([mark]).questions.map(({ code }) => code);
    expect(codes(tipMark('e', 0.04, { side: 'exhaust', off: 0.1 * IN }))).not.toContain('mark-near-the-edge');
    expect(codes({ ...near, stem: 0.375 * IN })).not.toContain('mark-near-the-edge');
  });

  test('nothing is called centred in words of ours: it was told so', () => {
    const wide = told([tipMark('w', 0.3)]);
    expect(wide.judgements[0]?.sentence).toContain('told as in the middle');
    expect(wide.judgements[0]?.sentence).not.toContain('centred');
  });
});

/* Sideways, then width, then place: desk playbook, call 6; of any number of marks, common practice, no source. */
describe('a mark off sideways goes before whatever was kept along the rocker', () => {
  const rod = (at: number) => ({ pushrod: at * IN });
  const along = tipMark('a', 0.05, { side: 'valley', off: 0.03 * IN, ...rod(7.8), line: 1 });
  const wider = tipMark('b', 0.056, { side: 'sideways', off: 0.04 * IN, ...rod(7.85), line: 2 });
  const narrower = tipMark('c', 0.045, { side: 'sideways', off: 0.04 * IN, ...rod(7.85), line: 3 });

  test.each([
    ['wider', [along, wider], 'b'],
    ['wider, then narrower', [along, wider, narrower], 'c'],
    ['of two lengths', [along, tipMark('d', 0.07, { ...rod(7.9), line: 1 }), wider], 'b'],
  ])('%s: no length is tried before it is square', (_, marks, judged) => {
    const said = told(marks);
    expect(said.detail.valves[0]?.judgedId).toBe(judged);
    expect(said.questions.map(({ code }) => code)).toEqual(['mark-sideways']);
    expect(nextOf(said)).toMatch(/no length mends that: line up the guide plate or the stud/);
    expect(said.headlines[0]?.sentence).toMatch(/\.040 in off sideways/);
    expect(said.detail.valves[0]?.advice ?? '').not.toMatch(/try|longer/);
  });

  test('inked lengthwise at that length, it was lined up; left as it is, the others are gone by', () => {
    const since = told([
      along,
      wider,
      tipMark('e', 0.05, { side: 'valley', off: 0.01 * IN, ...rod(7.85), line: 4 }),
    ]);
    expect(since.questions.map(({ code }) => code)).not.toContain('mark-sideways');
    expect(since.detail.valves[0]?.judgedId).not.toBe('b');
    expect(nextOf(answeredSo([along, wider], 'left'))).toMatch(/7\.850/);
  });

  test('looked at and square: it is inked once more, with no length beside it', () => {
    expect(nextOf(answeredSo([along, wider], 'square'))).toMatch(/ink it once more/);
  });
});
