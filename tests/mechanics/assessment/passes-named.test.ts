import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { lackSaid } from '../../../server/mechanics/assessment/ratio/read/lack-said.ts';
import { againOf } from '../../../server/mechanics/assessment/ratio/read/passes-repeat.ts';
import { readBoth } from '../../assessment/ratio/row.ts';

const answered = (evidence: Evidence, code: string, answer: string): Evidence => {
  const question = assess(evidence).questions.find((each) => each.code === code);
  if (question?.about.of !== 'set-up') throw new Error(`${code} is not asked of a set-up`);
  const { id: questionId, ask, about } = question;
  const given = { id: 'answer', line: 90, questionId, code, question: ask, answer, setUpId: about.setUpId };
  return { ...evidence, answers: [given] };
};
const lacks = (evidence: Evidence) => assess(evidence).details.setUps[0]?.lacks.join('\n');

/* Lobe and valve each have passes 1 to 3; figures invented. A turn of the dial is .100 in. */
describe('a pass is named with its lift', () => {
  const counted = readBoth([0.25, 0.25, 0.25], [0.56, 0.56, 0.56]);
  const evidence = { ...counted, passes: counted.passes.map((pass) => ({ ...pass, counted: false })) };

  test('a turn found missing on pass 2 of the lobe is of the lobe', () => {
    const found = answered(evidence, 'turn-miscounted', 'pass-2');
    expect(lacks(found)).toMatch(/pass 2 of the lobe entered again/);
    expect(lacks(found)).not.toMatch(/pass 2 entered again/);
    const next = assess(found).next;
    expect(next?.action).not.toMatch(/^enter-again-pass-2:/);
    expect(`${next?.action}`).toMatch(/of-the-lobe/);
  });

  test('a doubt of both lifts names the passes of both', () => {
    const exchanged = readBoth([0.56, 0.56, 0.56], [0.35, 0.35, 0.35]);
    expect(lacks(answered(exchanged, 'lifts-exchanged', 'found'))).toMatch(
      /passes 1, 2 and 3 of the lobe and passes 1, 2 and 3 of the valve entered again/,
    );
  });

  test.each([
    [['valve-lift'], 'pass 2 entered again or struck out: so'],
    [['lobe-lift'], 'pass 2 of the lobe entered again or struck out: so'],
    [
      ['lobe-lift', 'valve-lift'],
      'pass 2 of the lobe and pass 2 of the valve entered again or struck out: so',
    ],
    [['valve-lift', 'valve-lift'], 'pass 2 entered again or struck out: so'],
  ] as const)('pass 2 of %s', (kinds, said) => {
    const passes = kinds.map((kind) => ({ id: kind, kind, pass: 2 }));
    expect(lackSaid(againOf(passes, false, 'so'))).toBe(said);
  });
});
