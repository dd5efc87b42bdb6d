import { describe, expect, test } from 'vitest';
import { CAN_BE } from '../../../shared/schemas/can-be.ts';
import { enteredLengths } from '../../../shared/schemas/entered-list.ts';

/*
 * The decimal sign is either the comma or the point on the line: ISO 80000-1:2009, 7.3.1 (from memory). What lies
 * between two lengths is then told by what else stands there.
 */
const shims = enteredLengths('shims', CAN_BE.lashShim);
const read = (typed: string) => {
  const done = shims.safeParse({ typed, assume: 'mm' });
  return done.success ? done.data.map(({ value }) => value) : done.error.issues[0]?.message;
};

describe('lengths in one text', () => {
  test.each([
    ['2,5; 2,6', [2.5, 2.6]],
    ['2,4 mm', [2.4]],
    ['2,40; 2,45; 2,475', [2.4, 2.45, 2.475]],
    ['2,65, 2,70', [2.65, 2.7]],
    ['2,65 mm 2,70 mm', [2.65, 2.7]],
    ['2,5 2,6', [2.5, 2.6]],
    ['2,65 mm,2,70 mm', [2.65, 2.7]],
    ['2.60,2.65', [2.6, 2.65]],
    ['2.60 mm, 2.65 mm', [2.6, 2.65]],
    ['2,45\n2,50', [2.45, 2.5]],
    ['2, 3', [2, 3]],
  ])('%j', (typed, wanted) => {
    expect(read(typed)).toEqual(wanted);
  });

  test('a comma that can be either is refused, by its number and what came', () => {
    expect(read('2,60; 2,65,2,70')).toMatch(/^no\. 2 “2,65,2,70” .*is not a number/);
  });

  test('a text in JSON is read in the same way', () => {
    const done = shims.parse('2,65 mm 2,70 mm; 2,725 mm');
    expect(done.map(({ readAs }) => readAs)).toEqual(['2.65 mm', '2.70 mm', '2.725 mm']);
  });
});
