import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type {
  AnswerEvidence,
  Evidence,
  SheetEvidence,
} from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN, read } from './plain-build.ts';

/* .340 × 1.6 = .544; with .012 of lash in it .532. */
const HIGH = [0.544, 0.545, 0.544, 0.5435];
const LOW = [0.532, 0.5325, 0.533, 0.532];
const SINCE_LOW = [0.5315, 0.532, 0.5325, 0.533];
const SINCE_HIGH = [0.5445, 0.544, 0.5435, 0.545];
const ANSWERED_AT = 5_000;

const column = (figures: readonly number[], from: number, more: Partial<SheetEvidence> = {}) =>
  figures.map((inches, at) => read(from + at, 'intake', 'valve-lift', inches, more));
const later = (figures: readonly number[]) =>
  column(figures, 5).map((entry, at) => ({ ...entry, line: ANSWERED_AT + 10 + at }));
/** Each within .0005 of the card’s .340, as lobes are read: all of them alike would be asked about. */
const LOBES = [0.34, 0.3405, 0.34, 0.3395, 0.34, 0.3405, 0.3395, 0.34];
const lobes = () => LOBES.map((inches, at) => read(at + 1, 'intake', 'lobe-lift', inches));

const build = (sheet: readonly SheetEvidence[], answers: readonly AnswerEvidence[] = []): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'one-valve-differs' },
  engine: { ...PLAIN.engine, bankOrder: '1 2 3 4 / 5 6 7 8' },
  card: { ...PLAIN.card, intake: { lobeLift: 0.34 * IN, lash: 0.012 * IN } },
  springs: {},
  sheet: [...lobes(), ...column(HIGH, 1), ...sheet],
  answers,
});
const OPEN = build(column(LOW, 5));
const asked = (evidence: Evidence) => assess(evidence).questions.find(({ code }) => code === 'group-off');
const said = (answer: string, line = ANSWERED_AT): AnswerEvidence => {
  const { id = '', ask = '' } = asked(OPEN) ?? {};
  return { id: `said-${line}`, line, questionId: id, code: 'group-off', question: ask, answer };
};
const struck = column(LOW, 5, { standing: false });
const ofSide = (evidence: Evidence) =>
  assess(evidence).judgements.find(({ id }) => id === 'side:light:intake');

describe('valves that were off alike, read again after the answer', () => {
  test('until they are read again, that is next', () => {
    expect(assess(build(column(LOW, 5), [said('lash')])).next?.action).toBe('read-again');
  });

  test('off as before, the answer is done with: it is asked once more, and a new answer ends it', () => {
    for (const answer of ['lash', 'set-up']) {
      const again = build([...struck, ...later(SINCE_LOW)], [said(answer)]);
      expect(asked(again)?.answered).toBeUndefined();
      expect(asked(again)?.size).toMatch(/read again since it was answered, and are off as before/);
      expect(assess(again).next?.action).toBe('group-off');
      const alike = build(again.sheet.slice(12), [said(answer), said('not-found', ANSWERED_AT + 100)]);
      expect(assess(alike).next?.action).toBe('said');
    }
  });

  test('some of them read again: what was answered holds for those that are left', () => {
    const two = build(
      [...struck.slice(0, 2), ...later(SINCE_HIGH).slice(0, 2), ...column(LOW, 5).slice(2)],
      [said('lash')],
    );
    expect(assess(two).next?.action).toBe('read-again');
  });

  test('with the lash out they lie with the others: how it was is said', () => {
    const mended = build([...struck, ...later(SINCE_HIGH)], [said('lash')]);
    expect(ofSide(mended)?.sentence).toMatch(
      /Those that were low had their lash in, as was answered, and were read again\.$/,
    );
    expect(ofSide(mended)?.lacks).toEqual([]);
    const otherwise = build([...struck, ...later(SINCE_HIGH)], [said('set-up')]);
    expect(ofSide(otherwise)?.sentence).toMatch(/How the lash was is not said\.$/);
  });
});

describe('an answer of valves that were off alike', () => {
  const lashOut = (answers: readonly AnswerEvidence[], sheet: readonly SheetEvidence[]) =>
    ofSide(build(sheet, answers))?.sentence ?? '';
  const both = [...column(LOW, 5), ...later(SINCE_HIGH)];
  const passes = (answers: readonly AnswerEvidence[], sheet: readonly SheetEvidence[] = both) =>
    assess(build(sheet, answers))
      .details.sheet.rows.filter(({ cylinder, valve }) => cylinder === 5 && valve === 'intake')
      .flatMap(({ cells }) => cells.filter(({ kind }) => kind === 'valve-lift'))
      .map((cell) => cell.passes);

  test('that was put right before they were read again has none of them put aside, nor the lash out', () => {
    const corrected = [said('lash'), said('not-found', ANSWERED_AT + 1)];
    expect(passes([said('lash')])).toEqual([1]);
    expect(passes(corrected)).toEqual([2]);
    const mended = [...struck, ...later(SINCE_HIGH)];
    expect(lashOut([said('lash')], mended)).toMatch(
      /had their lash in, as was answered, and were read again/,
    );
    expect(lashOut(corrected, mended)).not.toMatch(/had their lash in, as was answered, and were read again/);
  });

  test('given again after they were read again is of what was read since', () => {
    expect(passes([said('lash'), said('not-found', ANSWERED_AT + 100)])).toEqual([1]);
  });

  test('what was struck since was never read: the later answer puts the earlier one right', () => {
    const gone = later(SINCE_HIGH).map((entry) => ({ ...entry, standing: false }));
    const answers = [said('lash'), said('not-found', ANSWERED_AT + 100)];
    const since = later(SINCE_HIGH).map((entry) => ({
      ...entry,
      id: `${entry.id}-b`,
      line: entry.line + 200,
    }));
    expect(passes(answers, [...column(LOW, 5), ...gone, ...since])).toEqual([2]);
  });

  test('sent in the words of its question alone does the same as under its id', () => {
    const { questionId: _, code: __, ...byWords } = said('lash');
    expect(passes([{ ...byWords, code: '' }])).toEqual([1]);
    expect(lashOut([{ ...byWords, code: '' }], [...struck, ...later(SINCE_HIGH)])).toMatch(
      /had their lash in, as was answered, and were read again/,
    );
  });
});
