import { expect, test } from 'vitest';
import { z } from 'zod';
import { loadComputations } from '../../server/compute/registry.ts';
import { answerParts } from '../../server/compute-forms/answer/answer-parts.ts';
import { labelOf } from '../../server/compute-forms/form/words.ts';
import { outPlace } from '../../shared/schemas/outputs.ts';

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

/* A table numbers its rows from 1: a place in a list that is said beside them is counted alike. */
test('a place in a list is told from 1, as the rows are numbered', () => {
  const item = z.object({ index: outPlace('which reading'), gap: z.number() });
  const schema = z.object({ flagged: z.array(item), least: item, past: z.array(outPlace('which value')) });
  const { scalars, tables } = answerParts(schema, {
    flagged: [{ index: 0, gap: 0 }],
    least: { index: 2, gap: 7 },
    past: [4],
  });
  expect(tables[0]?.rows[0]?.cells).toEqual(['1', '1', '0']);
  expect(tables[1]?.rows[0]?.cells).toEqual(['1', '5']);
  expect(scalars.map(({ label, about, value }) => [label, about, value])).toEqual([
    ['Least, number in the list', 'which reading, counted from 1', 3],
    ['Least, gap', '', 7],
  ]);
});
