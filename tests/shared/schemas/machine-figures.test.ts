import { expect, test } from 'vitest';
import { CAN_BE } from '../../../shared/schemas/can-be.ts';
import { crankAngle } from '../../../shared/schemas/crank-angle.ts';
import { entered } from '../../../shared/schemas/entered.ts';

/* What a program computed and sends has a tail that nobody read. Rounded by hand. */
test.each([
  ['angle', 11.383113482435038, 'deg', '11.383 deg'],
  ['length', 0.48215339, 'in', '.48215 in'],
  ['length', 12.246696, 'mm', '12.2467 mm'],
  ['length', 2.05, 'mm', '2.05 mm'],
  ['length', 0.000_035, 'in', '.000035 in'],
  ['load', 131.44827, 'lbf', '131.45 lbf'],
] as const)('%s %d %s is told as %s, and kept as it came', (dimension, value, unit, said) => {
  const field = entered(
    dimension,
    'anything',
    CAN_BE[dimension === 'angle' ? 'lean' : dimension === 'load' ? 'seatLoad' : 'pushedIn'],
    { sign: 'any' },
    { asksLater: true },
  );
  expect(field.parse({ value, unit })).toMatchObject({ value, readAs: said });
});

test('a crank angle past half a turn is refused without its tail', () => {
  const read = crankAngle('where').safeParse({ value: 211.3831134, unit: 'deg' });
  expect(read.error?.issues[0]?.message).toContain('is 211.38°');
});
