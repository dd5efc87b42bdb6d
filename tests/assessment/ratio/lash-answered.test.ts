import { expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN, passesOf } from '../../mechanics/assessment/plain.ts';
import { answered, readBoth } from './row.ts';

/* (.530 − .290) / (.350 − .200) = 1.600, and 1.6 × .350 − .530 = .030 is missing: sums by hand, an invented engine. */
const short = readBoth([0.35, 0.35, 0.351], [0.53, 0.53, 0.53]);
const BUILD: Evidence = {
  ...short,
  passes: [
    ...short.passes,
    ...passesOf('valve-lift-at', [0.29], { id: 'station', atLobeLift: 0.2 * IN, counted: true }),
  ],
};

const askedOf = (build: Evidence) => assess(build).questions.find(({ code }) => code === 'lash-left-in');

/** The question of the arm itself, answered as one of a set-up is. */
function saying(answer: string, more: object = {}): Evidence {
  const question = askedOf(BUILD);
  const { setUpId: _, ...said } = answered('lash-left-in', answer, more);
  return {
    ...BUILD,
    answers: [{ ...said, question: question?.ask ?? '', questionId: question?.id ?? '' }],
  };
}

test.each([
  ['not-found', {}],
  ['zero', {}],
  ['zero', { value: 0 }],
])('the lash was out, answered as %s: it is not asked again', (answer, more) => {
  expect(assess(BUILD).next?.action).toBe('lash-left-in');
  const build = saying(answer, more);
  expect(askedOf(build)?.answered).toMatchObject({ found: false });
  expect(assess(build).next?.action).not.toBe('lash-left-in');
});

test.each([
  ['found', {}],
  ['set', {}],
  ['set', { value: 0.03 * IN }],
])('it was left in, answered as %s: it is read again at zero', (answer, more) => {
  expect(assess(saying(answer, more)).next?.action).toMatch(/^lash-to-zero:/);
});
