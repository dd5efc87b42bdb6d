import { expect, test } from 'vitest';
import { readDesignation } from '../../server/mechanics/threads/read-designation.ts';

/* ASME B1.1: UNF is the fine series, UNC the coarse one. */
test.each([
  ['7/16 fine', '7/16-20 UNF'],
  ['7/16 Fine', '7/16-20 UNF'],
  ['3/8 fine', '3/8-24 UNF'],
])('%s is %s', (text, wanted) => {
  const read = readDesignation(text);
  expect(read.ok ? read.thread.designation : read.detail).toBe(wanted);
});
test.each(['finer', '7/16 find', 'fine'])('%j is no thread', (text) =>
  expect(readDesignation(text).ok).toBe(false),
);
