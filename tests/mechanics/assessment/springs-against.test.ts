import { expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { AnswerEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { buildOf, cleanSetUp, lobe, passesOf } from './plain.ts';

/*
 * A running spring takes lift and adds none: common practice, no published source. .5655 less .5495 is .016 in, five times
 * what the indicator may be off: arithmetic.
 */
const setUp = (number: number, spring: 'light' | 'running') => ({
  ...cleanSetUp,
  id: `set-up-${number}`,
  number,
  spring,
});
const build = buildOf([], {
  card: { assumedRatio: 1.6, intake: lobe(0.35), exhaust: lobe(0.35) },
  setUps: [setUp(1, 'light'), setUp(2, 'running')],
  passes: [
    ...passesOf('valve-lift', [0.5495, 0.549, 0.5495], { setUpId: 'set-up-1' }),
    ...passesOf('valve-lift', [0.5655, 0.566, 0.5655], { setUpId: 'set-up-2' }),
  ],
});

test('a running spring over the light one, each as noted: neither is set against the mark, and both are read again', () => {
  const asked = assess(build).questions.find(({ code }) => code === 'springs-swapped');
  const answer: AnswerEvidence = {
    id: 'answer-1',
    line: 100,
    code: 'springs-swapped',
    question: asked?.ask ?? '',
    questionId: asked?.id ?? '',
    setUpId: 'set-up-1',
    answer: 'not-found',
    found: false,
  };
  const { judgements, headlines, next } = assess({ ...build, answers: [answer] });
  expect(judgements.filter(({ against, word }) => against.to === 'mark' && word !== undefined)).toEqual([]);
  expect(headlines.map(({ sentence }) => sentence).join('\n')).not.toMatch(/takes nothing off/);
  expect(next?.sentence).toBe(
    '1 intake: read both springs again, same lifter, lash and zero: the running one reads .016 in over the light one, and a spring adds no lift.',
  );
});
