import { expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { AnswerEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { nothingKnown } from './plain.ts';
import { read } from './plain-build.ts';

/* Lobes .320 and .345, arms of 1.6: .512 and .552 (arithmetic). */
const row = (cylinder: number, intake: readonly [number, number], exhaust: readonly [number, number]) => [
  read(cylinder, 'intake', 'lobe-lift', intake[0]),
  read(cylinder, 'intake', 'valve-lift', intake[1]),
  read(cylinder, 'exhaust', 'lobe-lift', exhaust[0]),
  read(cylinder, 'exhaust', 'valve-lift', exhaust[1]),
];
const [IN, EX] = [[0.32, 0.512] as const, [0.345, 0.552] as const];

test('entered again after they were the other valve’s, readings take the place of those', () => {
  const sheet = [1, 2, 4, 5, 6].flatMap((cylinder) => row(cylinder, IN, EX));
  const wrong = row(3, EX, IN);
  const build = {
    ...nothingKnown,
    engine: { cylinders: 6, lifter: 'solid-roller' as const, mounting: 'stud' as const },
    rockers: { soldAs: 1.6 },
  };
  const before = assess({ ...build, sheet: [...sheet, ...wrong] }).questions.filter(
    ({ code }) => code === 'valve-swapped',
  );
  expect(before).not.toHaveLength(0);
  const line = Math.max(...[...sheet, ...wrong].map((each) => each.line)) + 1;
  const answers = before.map(
    ({ id, ask, code }, index): AnswerEvidence => ({
      id: `yes-${index}`,
      line,
      questionId: id,
      code,
      question: ask,
      answer: 'found',
      found: true,
    }),
  );
  const again = row(3, IN, EX).map((each) => ({ ...each, line: line + 1 + each.line }));
  const { questions, next } = assess({ ...build, sheet: [...sheet, ...wrong, ...again], answers });
  expect(questions.filter(({ weight, answered }) => weight === 'strong' && answered === undefined)).toEqual(
    [],
  );
  expect(next?.sentence ?? '').not.toMatch(/once more|again/);
});

test('without a card no card is named, nor read out', () => {
  const sheet = [1, 2, 4, 5, 6].flatMap((cylinder) => row(cylinder, IN, EX));
  const [asked] = assess({
    ...nothingKnown,
    engine: { cylinders: 6, lifter: 'solid-roller', mounting: 'stud' },
    sheet: [...sheet, ...row(3, EX, IN)],
  }).questions.filter(({ code }) => code === 'valve-swapped');
  expect(`${asked?.size ?? ''} ${asked?.test ?? 'card'}`).not.toMatch(/card/);
});
