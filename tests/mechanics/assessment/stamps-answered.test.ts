import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type {
  AnswerEvidence,
  Evidence,
  SheetEvidence,
} from '../../../server/mechanics/assessment/evidence.ts';
import { intakes, PLAIN } from './plain-build.ts';

/* “16” is a mark without its point; lifts over lobes of about .350 in, all invented. */
const CYLINDERS = [1, 2, 3];
const build = (carry: readonly number[], more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'one-valve-differs' },
  rockers: { soldAs: 1.5 },
  arms: CYLINDERS.map((at) => ({
    id: `arm-${at}`,
    name: `arm ${at}`,
    ratioStamp: carry.includes(at) ? '16' : '',
    otherNumber: '',
    boxLabel: '',
  })),
  seats: CYLINDERS.map((at) => ({ cylinder: at, valve: 'intake', armId: `arm-${at}` })),
  sheet: intakes().map((entry) => ({ ...entry, armId: `arm-${entry.cylinder}` })),
  ...more,
});
const asked = (evidence: Evidence) =>
  assess(evidence).questions.filter(({ code }) => code === 'stamp-is-ratio');
const answering = (evidence: Evidence, answer: string): AnswerEvidence => {
  const { id: questionId = '', ask: question = '' } = asked(evidence)[0] ?? {};
  return { id: 'said', line: 9, questionId, code: 'stamp-is-ratio', question, answer };
};

describe('a mark that was answered of one arm alone', () => {
  const answers = [answering(build([1]), 'ratio')];

  test('leaves the others with that mark asked', () => {
    const all = asked(build([1, 2, 3], { answers }));
    expect(all.map(({ about, answered }) => [about.of, answered !== undefined])).toEqual([
      ['build', false],
      ['arm', true],
    ]);
    expect(all[0]?.weight).toBe('strong');
  });

  test('and one other is asked by itself', () => {
    expect(asked(build([1, 2], { answers })).map(({ about }) => about.of)).toEqual(['arm', 'arm']);
  });

  test('what was answered of all of them is of all', () => {
    const said = [answering(build([1, 2, 3]), 'ratio')];
    expect(asked(build([1, 2, 3], { answers: said })).map(({ answered }) => answered?.answer)).toEqual([
      'ratio',
    ]);
  });
});

describe('a mark rests on what was read with its own arm', () => {
  test('after a swap on the lifts of the arm, not on those of the one before it', () => {
    const swapped = build([1], {
      seats: [
        { cylinder: 2, valve: 'intake', armId: 'arm-1' },
        { cylinder: 1, valve: 'intake', armId: 'arm-2' },
      ],
    });
    const liftOn = (cylinder: number) =>
      swapped.sheet
        .filter((entry: SheetEvidence) => entry.cylinder === cylinder && entry.kind === 'valve-lift')
        .map(({ id }) => id);
    expect(asked(swapped).map(({ restsOn }) => restsOn)).toEqual([liftOn(1)]);
  });
});
