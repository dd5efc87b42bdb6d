import { describe, expect, test } from 'vitest';
import { newReading } from '../../../shared/schemas/commands.ts';

const { peak } = newReading.shape;
const faults = (raw: unknown) => {
  const read = peak.safeParse(raw);
  return read.success ? [] : read.error.issues.map((issue) => ('params' in issue ? issue.params : undefined));
};

describe('a length that its field cannot be', () => {
  test.each([
    ['a number with its unit', { value: 13.36, unit: 'in' }],
    ['the same as a text', '13.36 in'],
    ['as a form sends it', { typed: '13.36 in', assume: 'in' }],
  ])('%s is asked in the other unit, where that is usual there', (_, raw) => {
    expect(faults(raw)).toMatchObject([
      {
        fault: 'out-of-range',
        ambiguities: [{ quantity: { value: 13.36, unit: 'mm' }, question: 'Is it 13.36 mm?' }],
      },
    ]);
  });

  test('what is nothing in either is refused, with nothing to pick', () => {
    expect(faults({ value: 90, unit: 'in' })).toMatchObject([{ fault: 'out-of-range' }]);
    expect(JSON.stringify(faults({ value: 90, unit: 'in' }))).not.toContain('ambiguities');
  });

  test('what the field can be is taken as it came', () => {
    expect(faults({ value: 0.536, unit: 'in' })).toEqual([]);
    expect(faults({ value: 13.36, unit: 'mm' })).toEqual([]);
  });
});
