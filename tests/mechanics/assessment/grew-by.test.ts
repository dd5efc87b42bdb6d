import { expect, test } from 'vitest';
import { grewBy } from '../../../server/mechanics/assessment/common/grew-by.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';

test.each([
  [0.005, 0.007, '.005 to .007 in'],
  [0.005, 0.005, '.005 in'],
  [0.005, undefined, '.005 in'],
])('%f to %f in is told with both ends', (low, high, said) => {
  const growth = { low: low * IN, ...(high === undefined ? {} : { high: high * IN }) };
  expect(grewBy(growth)).toBe(said);
});
