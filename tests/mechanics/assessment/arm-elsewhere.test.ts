import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { AnswerEvidence, Evidence, SatThen } from '../../../server/mechanics/assessment/evidence.ts';
import { armOf, setUpOn, together, VERIFY } from './whole-sheet.ts';

/* A set-up names A on 1 intake, where by the record B sat; A sat on 3 intake. .526 over the lobe of .3503 is 1.501. */

const [A, B] = [armOf('A'), armOf('B', { ratioStamp: '1.5' })];
const on = (cylinder: number, armId: string) => ({ cylinder, valve: 'intake' as const, armId });
const sat = (cylinder: number, armId: string): SatThen => ({
  ...on(cylinder, armId),
  everOn: [{ cylinder, valve: 'intake' }],
});
const READ: Evidence = {
  ...VERIFY,
  arms: [A, B],
  seats: [on(3, A.id), on(1, B.id)],
  ...together(setUpOn(1, A.id, [0.526, 0.526, 0.5255], { satThen: [sat(3, A.id), sat(1, B.id)] })),
};
const asked = (evidence: Evidence) =>
  assess(evidence).questions.filter(({ code }) => code === 'arm-sits-elsewhere');

/** What is said once these answers were given, one after the other. */
function toldBy(...said: readonly string[]) {
  const [question] = asked(READ);
  const answers = said.map(
    (answer, at): AnswerEvidence => ({
      id: `answer-${at}`,
      line: 90 + at,
      setUpId: READ.setUps[0]?.id ?? '',
      questionId: question?.id ?? '',
      code: 'arm-sits-elsewhere',
      question: question?.ask ?? '',
      answer,
    }),
  );
  const told = [answers, [...answers].reverse()].map((all) => assess({ ...READ, answers: all }));
  expect(told[1]).toEqual(told[0]);
  return {
    weights: asked({ ...READ, answers }).map(({ weight, answered }) => [weight, answered?.answer]),
    first: told[0]?.headlines[0]?.sentence ?? '',
    next: told[0]?.next?.action.split(':')[0],
  };
}

describe('an arm that sat elsewhere by the record', () => {
  test('the last answer counts as it was given of the set-up, whatever was answered before', () => {
    for (const before of [[], ['other-valve'], ['arm-there'], ['arm-there', 'other-valve']]) {
      const { weights, first, next } = toldBy(...before, 'moved');
      expect(weights).toEqual([['weak', 'moved']]);
      expect(first).toMatch(/^1 intake: 1\.501/);
      expect(next).toBe('move');
    }
    const { weights, first } = toldBy('arm-there', 'other-valve');
    expect(weights).toEqual([['weak', 'other-valve']]);
    expect(first).toMatch(/^3 intake: 1\.501/);
  });

  test('a word beside the answer leaves it what it is', () => {
    expect(toldBy('moved: last week').next).toBe('move');
  });

  test.each(['no, it was not moved', 'nobody moved it', 'not moved'])(
    '“%s” leaves open which it was, and no reading counts for A there',
    (said) => {
      const { weights, first, next } = toldBy(said);
      expect(weights).toEqual([['strong', said]]);
      expect(first).toMatch(/^1 intake: not yet set against .* Was it moved\?/);
      expect(next).toBe('arm-sits-elsewhere');
    },
  );
});
