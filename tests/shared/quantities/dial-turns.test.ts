import { describe, expect, test } from 'vitest';
import type { ReadOptions } from '../../../shared/quantities/read-number.ts';
import { asked, DIAL, read, refused } from './reading-helpers.ts';

// A .001 in dial turns once in .100 in, a .01 mm dial once in 1 mm: ASME B89.1.10M dials (from memory).
const METRIC: ReadOptions = { kind: 'turns', perTurn: { value: 1, unit: 'mm' } };
const MICRON: ReadOptions = { kind: 'turns', perTurn: { value: 0.2, unit: 'mm' } };

describe('turns of a dial', () => {
  test.each([
    '3 turns 42',
    'three turns forty-two',
    '3t 42',
    '3T42',
    '3 turns, 42',
    '3 turns and 42',
    '3 turns 42 thou',
  ])('%s is .342 in', (text) => {
    expect(read(text, DIAL)).toMatchObject({
      turns: 3.42,
      value: 3.42,
      length: { value: 0.342, unit: 'in' },
      needle: { value: 42, unit: 'thou' },
    });
  });

  test('the echo shows the turns and the length', () => {
    expect(read('5 turns 66', DIAL).readAs).toBe('5 turns 66 = .566 in');
    expect(read('3 turns', DIAL).readAs).toBe('3 turns = .300 in');
    expect(read('12 turns 24', METRIC).readAs).toBe('12 turns 24 = 12.24 mm');
  });

  test.each([
    ['3 turns oh six', DIAL, 0.306],
    ['3 turns 42.5', DIAL, 0.3425],
    ['3 turns .042', DIAL, 0.342],
    ['two turns oh six and a half', DIAL, 0.2065],
    ['3 turns and a half', DIAL, 0.35],
    ['half a turn', DIAL, 0.05],
    ['2.5', DIAL, 0.25],
    ['-1/2 turn', DIAL, -0.05],
    ['4 turns 120', MICRON, 0.92],
  ])('%s', (text, options, length) => {
    expect(read(text, options).length?.value).toBe(length);
  });

  test('a length can be said in turns once the dial is known', () => {
    const options: ReadOptions = { kind: 'length', perTurn: { value: 0.1, unit: 'in' } };
    expect(read('5 turns 66', options)).toMatchObject({ value: 0.566, unit: 'in' });
    expect(refused('5 turns 66', { kind: 'length' }).code).toBe('required');
  });

  test('turns alone need no dial', () => {
    expect(read('1 1/2 turns', { kind: 'turns' })).toEqual({
      ok: true,
      value: 1.5,
      turns: 1.5,
      readAs: '1 1/2 turns',
    });
    expect(refused('3 turns 42', { kind: 'turns' }).code).toBe('required');
  });

  test.each([
    ['3 turns 100', 'out-of-range'],
    ['3.5 turns 42', 'not-allowed'],
    ['3 turns 42 deg', 'unknown-unit'],
    ['3 turns 42 17', 'unknown-unit'],
    ['3 turns and', 'not-a-number'],
    ['turns', 'not-a-number'],
    ['1/0 turns', 'not-a-number'],
    ['1e999 turns', 'out-of-range'],
    ['three forty-two', 'not-a-number'],
    ['.342 in', 'wrong-dimension'],
  ])('%s is refused', (text, code) => {
    expect(refused(text, DIAL).code).toBe(code);
  });

  test('a comma that may part thousands is asked', () => {
    expect(asked('1,234 turns', DIAL)).toEqual([{ value: 1.234 }, { value: 1234 }]);
  });

  test('a travel per turn that is none is refused', () => {
    expect(refused('3 turns', { kind: 'turns', perTurn: { value: 0, unit: 'in' } }).code).toBe(
      'out-of-range',
    );
    expect(refused('3 turns', { kind: 'turns', perTurn: { value: 1, unit: 'deg' } }).code).toBe(
      'wrong-dimension',
    );
  });
});
