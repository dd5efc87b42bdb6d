import { expect, test } from 'vitest';
import { loadComputations } from '../../server/compute/registry.ts';
import { answerParts } from '../../server/compute-forms/answer/answer-parts.ts';
import { labelOf } from '../../server/compute-forms/form/words.ts';

const computations = [...(await loadComputations()).values()];

/* A label is read aloud: no name of the contract, and no bare number, is one. */
test('every answer has its labels in words', () => {
  const labels = computations.flatMap(({ output, run, example }) => {
    const { scalars, tables } = answerParts(output, run(example.inputs, 'inch').result);
    return [...scalars, ...tables.flatMap(({ columns }) => columns)].map(({ label }) => label);
  });
  expect(labels.length).toBeGreaterThan(100);
  for (const label of labels) expect(label).not.toMatch(/^\d*$|\bindex\b|interval 95/i);
  expect(labelOf('interval95')).toBe('95 % interval');
  expect(labelOf('lobeLift')).toBe('Lobe lift');
});
