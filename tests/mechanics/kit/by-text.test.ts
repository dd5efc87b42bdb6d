import { expect, test } from 'vitest';
import { byText } from '../../../server/mechanics/kit/by-text.ts';

test('texts are put in one order, however they came', () => {
  expect(['b', 'a-2', 'a', 'B', 'a-10'].toSorted(byText)).toEqual(['B', 'a', 'a-10', 'a-2', 'b']);
});

test('the same text is neither before nor after itself', () => {
  expect([byText('a', 'a'), byText('a', 'b'), byText('b', 'a')]).toEqual([0, -1, 1]);
});
