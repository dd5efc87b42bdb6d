import { describe, expect, test } from 'vitest';
import type { NumberKind } from '../../../shared/quantities/read-number.ts';
import { LENGTH, refused } from './reading-helpers.ts';

describe('texts that are no number', () => {
  test.each([
    'NaN',
    'Infinity',
    '12 12',
    '1/0',
    '1/0 in',
    '--3',
    '0x10',
    '\u0661\u0662',
    '\u0000',
    '1\u0000 in',
    '1.2.3 mm',
    '12,24,5 mm',
    '1/2/3 in',
    'about 5 mm',
    'in',
    '-',
    '.',
    '__proto__',
    'constructor in',
    '1 -5/8 in',
    'one two hundred in',
    'one and two in',
    '12 forty in',
  ])('%j', (text) => {
    const fault = refused(text, LENGTH);
    expect(fault.code).toBe('not-a-number');
    expect(fault.detail).toContain('write it like .482 in');
  });

  test.each(['', '   ', '\u00A0', '\u200B'])('%j is nothing', (text) => {
    expect(refused(text, LENGTH).code).toBe('required');
  });

  test.each(['1e999 in', '-1e999 in', '1e-999 in', '1e308 GPa'])('%s is past what a number holds', (text) => {
    const kind: NumberKind = text.endsWith('GPa') ? 'pressure' : 'length';
    expect(refused(text, { kind }).code).toBe('out-of-range');
  });

  test('a text of more than 200 characters is refused with its length', () => {
    expect(refused('1'.repeat(201), LENGTH)).toEqual({
      code: 'not-allowed',
      detail: 'The text has 201 characters; 200 at the most.',
    });
    expect(refused('a'.repeat(1_000_000), LENGTH).code).toBe('not-allowed');
  });
});

describe('a figure that is said to be none that was read', () => {
  test.each([
    'about 38 mm',
    'roughly 1.5 in',
    '~38 mm',
    'ca. 38 mm',
    '38 mm or so',
    'about four thirty-five',
  ])('%s: it is said what to leave out, and that a guess is said beside it', (text) => {
    const { code, detail } = refused(text, LENGTH);
    expect(code).toBe('not-a-number');
    expect(detail).toMatch(/leave that out, and where the figure is a guess say so beside it/);
  });
});

describe('units that do not fit', () => {
  const wrong: [string, NumberKind, string][] = [
    ['185 lb', 'length', 'wrong-dimension'],
    ['.482 in', 'load', 'wrong-dimension'],
    ['185 lbf', 'mass', 'wrong-dimension'],
    ['21 mil', 'angle', 'wrong-dimension'],
    ['5 turns 66', 'load', 'wrong-dimension'],
    ['1.6 in', 'ratio', 'wrong-dimension'],
    ['185', 'load', 'wrong-dimension'],
    ['5 cm', 'length', 'unknown-unit'],
    ["5'", 'length', 'unknown-unit'],
    ['5 %', 'ratio', 'unknown-unit'],
    ['5 constructor', 'length', 'unknown-unit'],
  ];
  test.each(wrong)('%s as a %s: %s', (text, kind, code) => {
    const fault = refused(text, { kind });
    expect(fault.code).toBe(code);
    expect(fault.detail).toContain(text);
  });

  test('an assumed unit of another dimension is refused', () => {
    expect(refused('5', { kind: 'length', assume: 'lbf' }).code).toBe('wrong-dimension');
  });
});
