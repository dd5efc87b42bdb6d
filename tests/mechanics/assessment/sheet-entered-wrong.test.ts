import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { AnswerEvidence, SheetEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { PLAIN, read } from './plain-build.ts';

/*
 * Lobes of .350 and .360 under arms of about 1.615. Figures of one cylinder that are another's to .0001 are a chance of
 * one in many thousands (binomial, honest-repeats.ts); lobe and valve lift exchanged make 1 / 1.615 = .619: arithmetic.
 * What is asked of it, and how often, is common practice, no published source.
 */
const OFF = [0.0003, -0.0006, 0.0007, -0.0002, 0.0005, -0.0004, 0.0001, -0.0008];
const BUILD = {
  ...PLAIN,
  springs: {},
  card: { assumedRatio: 1.6, intake: { lobeLift: 0.35 * 0.0254 }, exhaust: { lobeLift: 0.36 * 0.0254 } },
};

/** The four figures of a cylinder, as `as` has them. */
function rowOf(cylinder: number, as = cylinder): SheetEvidence[] {
  const off = OFF[as - 1] ?? 0;
  return (['intake', 'exhaust'] as const).flatMap((valve, side) => [
    read(cylinder, valve, 'lobe-lift', 0.35 + side / 100 + off),
    read(cylinder, valve, 'valve-lift', Number((0.5652 + side * 0.0162 - off * 1.3).toFixed(4))),
  ]);
}
const CYLINDERS = [1, 2, 3, 4, 5, 6, 7, 8];
const told = (sheet: readonly SheetEvidence[], answers: readonly AnswerEvidence[] = []) => {
  const { questions, headlines, next } = assess({ ...BUILD, sheet, answers });
  return {
    asked: questions
      .filter(({ code, answered }) => code !== 'lash-not-said' && answered === undefined)
      .map(({ ask }) => ask),
    text: headlines.map(({ sentence }) => sentence),
    next: next?.action,
    questions,
  };
};

describe('rows that are other rows entered twice', () => {
  const copied = CYLINDERS.flatMap((each) => rowOf(each, each > 4 ? each - 4 : each));

  test('cylinders 5 to 8 that are 1 to 4 to the last digit are asked about once, and nothing is made of them', () => {
    expect(told(copied)).toMatchObject({
      asked: ['Were cylinders 5 to 8 read, or are they 1 to 4 entered twice?'],
      next: 'copied-reading',
      text: [expect.stringMatching(/^The valves asked about are not set against the others yet\./)],
    });
  });

  test('two of them too; one cylinder that reads as another may do so', () => {
    const two = CYLINDERS.flatMap((each) => rowOf(each, each > 6 ? each - 4 : each));
    expect(told(two).asked).toEqual(['Were cylinders 7 and 8 read, or are they 3 and 4 entered twice?']);
    const one = CYLINDERS.flatMap((each) => rowOf(each, each === 6 ? 2 : each));
    expect(told(one).asked).toEqual([]);
  });

  test('cylinders that were each read are not asked', () => {
    expect(told(CYLINDERS.flatMap((each) => rowOf(each))).asked).toEqual([]);
  });

  test('read each by itself, as was answered, they count', () => {
    const [question] = told(copied).questions.filter(({ code }) => code === 'copied-reading');
    const answer: AnswerEvidence = {
      id: 'answer-1',
      line: 10_000,
      code: 'copied-reading',
      questionId: question?.id ?? '',
      question: question?.ask ?? '',
      answer: 'not-found',
      found: false,
    };
    expect(told(copied, [answer]).text.join('\n')).toMatch(/No intake stands out: all 8/);
  });
});

describe('the columns of lobe and valve lift exchanged', () => {
  const other = (each: SheetEvidence): SheetEvidence => ({
    ...each,
    kind: each.kind === 'lobe-lift' ? 'valve-lift' : 'lobe-lift',
  });
  const all = CYLINDERS.flatMap((each) => rowOf(each));

  test('on the whole sheet: one question, before any other slip or another cam', () => {
    expect(told(all.map(other))).toMatchObject({
      asked: ['Could the columns of the lobe and valve lifts be exchanged?'],
      next: 'lifts-exchanged',
      text: [expect.stringMatching(/^The valves asked about are not set against the others yet\./)],
    });
  });

  test('of one side alone it is asked of that side', () => {
    const intakes = all.map((each) => (each.valve === 'intake' ? other(each) : each));
    expect(told(intakes).asked).toEqual([
      'Could the columns of the intake lobe and valve lifts be exchanged?',
    ]);
  });

  test('of one row it is asked of that valve', () => {
    const one = all.map((each) => (each.valve === 'intake' && each.cylinder === 3 ? other(each) : each));
    expect(told(one).asked).toEqual([
      expect.stringMatching(/^Could lobe and valve lift be exchanged, \.56\d in and \.35\d in\?$/),
    ]);
  });
});

test('digits of a lift that is level with another one as it is are not asked about', () => {
  const lift = (cylinder: number, value: number) => read(cylinder, 'intake', 'valve-lift', value);
  const three = [lift(1, 0.565), lift(2, 0.566), lift(3, 0.545)];
  expect(told(three).asked.filter((ask) => ask.includes('two digits'))).toEqual([]);
});

test('columns that are exchanged are no ground to ask for the heights of the springs', () => {
  // Lobes of .565 under 1.6 would lift .904, and there is .650 to solid: the lobes are what is wrong.
  const NAME: Readonly<Record<string, SheetEvidence['kind']>> = {
    'lobe-lift': 'valve-lift',
    'valve-lift': 'lobe-lift',
  };
  const sheet = CYLINDERS.flatMap((each) => rowOf(each)).map((each) => ({
    ...each,
    kind: NAME[each.kind] ?? each.kind,
  }));
  const springs = { installedHeight: 1.8 * 0.0254, solidHeight: 1.15 * 0.0254 };
  const { questions } = assess({ ...BUILD, rockers: { soldAs: 1.6 }, springs, sheet });
  const codes = questions.map(({ code }) => code);
  expect(codes).toContain('lifts-exchanged');
  expect(codes).not.toContain('springs-bind-already');
});
