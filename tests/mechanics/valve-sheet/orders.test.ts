import { describe, expect, test } from 'vitest';
import { banksOf, readOrder, standsAt } from '../../../server/mechanics/valve-sheet/orders.ts';

describe('an order out of a text', () => {
  test.each([
    ['1342', 4, [1, 3, 4, 2]],
    ['1342', undefined, [1, 3, 4, 2]],
    ['1-3-4-2', undefined, [1, 3, 4, 2]],
    ['123456789', 9, [1, 2, 3, 4, 5, 6, 7, 8, 9]],
    ['1-7-5-11-3-9-6-12-2-8-4-10', 12, [1, 7, 5, 11, 3, 9, 6, 12, 2, 8, 4, 10]],
    ['1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16', undefined, Array.from({ length: 16 }, (_, at) => at + 1)],
    ['1', 1, [1]],
    ['one eight four three six five seven two', 8, [1, 8, 4, 3, 6, 5, 7, 2]],
    ['One, three, four, two', undefined, [1, 3, 4, 2]],
  ])('%j of %j cylinders', (text, cylinders, order) => {
    expect(readOrder(text, cylinders)).toEqual(order);
  });

  test.each([
    ['one is twice, one is missing', '1-2-3-3', 4],
    ['one too many', '1-2-3-4-4', 4],
    ['too few', '1-3-2', 4],
    ['of another engine', '1-3-4-2', 6],
    ['ten digits together can be anything', '12345678910', 10],
    ['more cylinders than an engine has', Array.from({ length: 17 }, (_, at) => at + 1).join('-'), 17],
    ['no numbers', 'as usual', 4],
  ])('%s: no order', (_why, text, cylinders) => {
    expect(readOrder(text, cylinders)).toBeUndefined();
  });
});

describe('where a cylinder stands', () => {
  const V8 = '1 3 5 7 / 2 4 6 8';
  test.each([
    [V8, 1, 8, 'bank 1, 1st from the front'],
    [V8, 4, 8, 'bank 2, 2nd from the front'],
    [V8, 5, 8, 'bank 1, 3rd from the front'],
    [V8, 8, 8, 'bank 2, 4th from the front'],
    ['1 2 3 4', 1, 4, '1st from the front'],
    ['1 2 3 4', 3, 4, '3rd from the front'],
  ])('%j: %d of %d', (text, cylinder, cylinders, said) => {
    expect(standsAt(text, cylinder, cylinders)).toBe(said);
  });

  test('nothing of a text that names them not, or of a cylinder it does not name', () => {
    expect(standsAt(undefined, 1, 8)).toBeUndefined();
    expect(standsAt('as numbered', 1, 8)).toBeUndefined();
    expect(standsAt('1 3 5 7 / 2 4 6 6', 1, 8)).toBeUndefined();
    expect(standsAt(V8, 9, 8)).toBeUndefined();
    expect(standsAt('18436572', 1, 8)).toBeUndefined();
  });
});

describe('banks', () => {
  test.each([
    '1 3 5 7 / 2 4 6 8',
    '1 3 5 7, 2 4 6 8',
    '1-3-5-7 - 2-4-6-8',
    '1,3,5,7 – 2,4,6,8',
    'left 1,3,5,7 right 2,4,6,8',
    '1,3,5,7 2,4,6,8',
    '1 3 5 7\n2 4 6 8',
  ])('%j has two', (text) => {
    expect(banksOf(text, 8)).toEqual([
      [1, 3, 5, 7],
      [2, 4, 6, 8],
    ]);
  });

  test.each([
    ['nothing said', undefined, 4],
    ['nothing parts them', '1 2 3 4', 4],
    ['banks of one', '1, 2, 3, 4', 4],
    ['one stands twice', '1 2 / 2 3', 4],
    ['one stands twice, beside all others', '1 2 3 / 3 4', 4],
    ['one is missing', '1 3 / 2', 4],
    ['a cylinder of no number', '0 1 / 2 3', 4],
  ])('%s: none', (_why, text, cylinders) => {
    expect(banksOf(text, cylinders)).toEqual([]);
  });
});
