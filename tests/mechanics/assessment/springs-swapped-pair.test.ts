import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { SPRINGS_SWAPPED } from '../../../server/mechanics/assessment/ratio/sayings.ts';
import { buildOf, cleanSetUp, passesOf } from './plain.ts';

/*
 * The running spring can only take lift away: .540 on the light one and .560 on the running one are noted the wrong way
 * round. A third set-up was begun on a light spring and has its lobe alone.
 */
const setUp = (number: number, spring: 'light' | 'running') => ({
  ...cleanSetUp,
  id: `set-up-${number}`,
  number,
  spring,
  lobeSource: 'indicator' as const,
});
const at = (passes: ReturnType<typeof passesOf>, first: number) =>
  passes.map((pass, index) => ({ ...pass, counted: true, line: first + index }));
const lobes = (setUpId: string, first: number) =>
  at(passesOf('lobe-lift', [0.348, 0.348, 0.348], { setUpId }), first);
const lifts = (setUpId: string, lift: number, first: number) =>
  at(passesOf('valve-lift', [lift, lift, lift], { setUpId }), first);

const evidence: Evidence = buildOf([], {
  setUps: [setUp(1, 'light'), setUp(2, 'running'), setUp(3, 'light')],
  passes: [
    ...lobes('set-up-1', 1),
    ...lifts('set-up-1', 0.54, 4),
    ...lobes('set-up-2', 11),
    ...lifts('set-up-2', 0.56, 14),
    ...lobes('set-up-3', 21),
  ],
});
const springs = (build: Evidence) =>
  assess(build).details.setUps.map(({ setUp: { number, spring } }) => [number, spring]);

describe('two springs noted the wrong way round', () => {
  const question = assess(evidence).questions.find(
    ({ code, about }) => code === SPRINGS_SWAPPED && about.of === 'set-up' && about.number === 2,
  );

  test('are those of the two set-ups that were asked about, not of one that has no lift yet', () => {
    expect(question).toBeDefined();
    const { id: questionId = '', ask = '' } = question ?? {};
    const said = {
      id: 'said',
      line: 50,
      questionId,
      code: SPRINGS_SWAPPED,
      question: ask,
      answer: 'found',
      setUpId: 'set-up-2',
    };
    expect(springs({ ...evidence, answers: [said] })).toEqual([
      [1, 'running'],
      [2, 'light'],
      [3, 'light'],
    ]);
  });
});
