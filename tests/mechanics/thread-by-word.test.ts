import { expect, test } from 'vitest';
import { readDesignation } from '../../server/mechanics/threads/read-designation.ts';

/* ASME B1.1: UNF is the fine series, UNC the coarse one. ISO 261: of the pitches of a metric size the largest is the coarse one. */
test.each([
  ['7/16 fine', '7/16-20 UNF'],
  ['7/16 Fine', '7/16-20 UNF'],
  ['3/8 fine', '3/8-24 UNF'],
  ['3/8-24 fine', '3/8-24 UNF'],
  ['M8x1 fine', 'M8×1'],
  ['M8 fine', 'M8×1'],
  ['M8 coarse', 'M8×1.25'],
  ['m10 x 1.25 fine - 6g', 'M10×1.25'],
])('%s is %s', (text, wanted) => {
  const read = readDesignation(text);
  expect(read.ok ? read.thread.designation : read.detail).toBe(wanted);
});
test.each([
  // Two fine pitches: which of them, nobody said.
  ['M10 fine', /needs its pitch; known: M10×1\.25, M10×1$/],
  ['M8x1 coarse', /M8×1 is not the coarse one/],
  ['M8', /needs its pitch/],
  ['7/16-14 fine', /is not UNF/],
])('%s is told what it lacks', (text, wanted) => {
  const read = readDesignation(text);
  expect(read.ok ? '' : read.detail).toMatch(wanted);
});
test.each(['finer', '7/16 find', 'fine'])('%j is no thread', (text) =>
  expect(readDesignation(text).ok).toBe(false),
);
