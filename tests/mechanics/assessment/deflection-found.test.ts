import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { armOf, setUpOn, together, VERIFY } from './whole-sheet.ts';

/*
 * .561 on the light spring less .501 on the running one is .060, more than the .005 to .040 in that is usual on studs:
 * common practice, no published source.
 */
const A = armOf('Arm A');
const BOTH: Evidence = {
  ...VERIFY,
  arms: [A],
  seats: [{ cylinder: 1, valve: 'intake', armId: A.id }],
  ...together(
    setUpOn(1, A.id, [0.561, 0.561, 0.5605]),
    setUpOn(1, A.id, [0.501, 0.501, 0.5005], { spring: 'running' }),
  ),
};
const CODE = 'deflection-more-than-usual';

function told(found?: boolean) {
  const open = assess(BOTH).questions.find(({ code }) => code === CODE);
  if (open === undefined) throw new Error('nobody is asked why the spring takes so much');
  const answers: Evidence['answers'] =
    found === undefined
      ? []
      : [
          {
            id: 'looked',
            line: 99,
            questionId: open.id,
            code: CODE,
            question: open.ask,
            answer: found ? 'found' : 'not found',
            found,
          },
        ];
  const { judgements, quantities, questions, headlines } = assess({ ...BOTH, answers });
  return {
    judgement: judgements.find(({ id }) => id.startsWith('usual-deflection:')),
    lacking: quantities.filter(({ id }) => id.startsWith('deflection')).map(({ lacks }) => lacks.length),
    questions: questions.filter(({ code }) => code === CODE),
    headlines: headlines.map(({ sentence }) => sentence).join('\n'),
  };
}

describe('the running spring takes more than usual', () => {
  test('lash was in, or the zero had moved: the two are not set against each other, and nothing is called flex', () => {
    const { judgement, lacking, questions, headlines } = told(true);
    expect(judgement?.sentence).toMatch(
      /^Light and running spring are not set against each other yet\. First: both springs read with the lash out/,
    );
    expect(judgement?.lacks).toHaveLength(1);
    expect(lacking).toEqual([1, 1]);
    expect(headlines).not.toMatch(/more than usual/);
    // It stays with its answer.
    expect(questions.map(({ answered }) => answered?.found)).toEqual([true]);
  });

  test('asked, or looked at and not so, it is said as it was read', () => {
    for (const found of [undefined, false]) {
      const { judgement, lacking } = told(found);
      expect(judgement?.sentence).toMatch(/takes \.060 in .* more than usual/);
      expect(lacking).toEqual([0, 0]);
    }
  });
});
