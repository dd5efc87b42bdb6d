import { expect, test } from 'vitest';
import { listed } from '../../../server/call/takeover-items.ts';

test.each([
  [['.847 in', '.848 in', '.847 in'], '.847, .848, .847 in'],
  [
    ['5 turns 66 = .566 in', '565 thou = .565 in', '14.37 mm', '.4 in'],
    '5 turns 66 = .566, 565 thou = .565 in, 14.37 mm, .4 in',
  ],
  [['16 mm', '14.37 mm', '.566 in'], '16, 14.37 mm, .566 in'],
  [['(.460 in: one in three was off)', '.560 in'], '(.460: one in three was off), .560 in'],
])('a unit is left out only before one of the same: %j', (texts, told) => {
  expect(listed(texts)).toBe(told);
});
