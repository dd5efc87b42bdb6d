import { describe, expect, test } from 'vitest';
import { asked, INCHES, LENGTH, read, refused } from './reading-helpers.ts';

describe('fractions of an inch', () => {
  // Decimal equivalents of fractions of an inch, table in Machinery's Handbook (any edition): exact.
  test.each([
    ['1/64', 0.015625],
    ['5/32', 0.15625],
    ['11/32', 0.34375],
    ['7/16', 0.4375],
    ['29/64', 0.453125],
    ['5/8', 0.625],
  ])('%s in is exactly %d', (text, value) => {
    expect(read(`${text} in`, LENGTH)).toMatchObject({ value, unit: 'in' });
    expect(read(`${text}"`, LENGTH).value).toBe(value);
    expect(read(text, INCHES).value).toBe(value);
  });

  test.each([
    '1 5/8 in',
    '1-5/8 in',
    '1 5/8"',
    '1 5/8\u201D',
    '1 5/8\u2033',
    '1\u215D in',
    '1 5\u20448 inches',
  ])('%s is 1.625 in', (text) => {
    expect(read(text, LENGTH)).toEqual({ ok: true, value: 1.625, unit: 'in', readAs: '1 5/8 in = 1.625 in' });
  });

  test('a fraction is echoed with what it comes to', () => {
    expect(read('7/16', INCHES).readAs).toBe('7/16 in = .4375 in');
    expect(read('½ in', LENGTH).readAs).toBe('1/2 in = .500 in');
    expect(read('4 2/3 in', LENGTH).readAs).toBe('4 2/3 in = 4.666667 in');
  });
});

describe('written lengths', () => {
  // Leading zero for millimetres, none for inches: ASME Y14.5-2009, 1.6.1 and 1.6.2 (from memory).
  test.each([
    ['.482 in', 0.482, 'in', '.482 in'],
    ['0.482 IN.', 0.482, 'in', '.482 in'],
    ['.482"', 0.482, 'in', '.482 in'],
    ['.500 in', 0.5, 'in', '.500 in'],
    ['482 thou', 482, 'thou', '482 thou = .482 in'],
    ['482 thousandths of an inch', 482, 'thou', '482 thou = .482 in'],
    ['435.5 Thou', 435.5, 'thou', '435.5 thou = .4355 in'],
    ['12.24 mm', 12.24, 'mm', '12.24 mm'],
    ['12,24 mm', 12.24, 'mm', '12.24 mm'],
    [',24 mm', 0.24, 'mm', '0.24 mm'],
    ['12.24\u202FMM', 12.24, 'mm', '12.24 mm'],
    ['12.24\u00A0millimetres', 12.24, 'mm', '12.24 mm'],
    ['50 \u00B5m', 50, 'um', '50 um'],
    ['50 \u03BCm', 50, 'um', '50 um'],
    ['3 microns', 3, 'um', '3 um'],
    ['\u2212.003 in', -0.003, 'in', '\u2212.003 in'],
    ['5e-5 in', 0.00005, 'in', '.00005 in'],
    ['1,234.5 mm', 1234.5, 'mm', '1234.5 mm'],
    ['1.234,5 mm', 1234.5, 'mm', '1234.5 mm'],
    ['0,482 in', 0.482, 'in', '.482 in'],
    ['5 ten-thousandths', 0.0005, 'in', '.0005 in'],
  ])('%s', (text, value, unit, readAs) => {
    expect(read(text, LENGTH)).toEqual({ ok: true, value, unit, readAs });
  });

  test('minus zero is zero', () => {
    expect(Object.is(read('-0 mm', LENGTH).value, 0)).toBe(true);
  });
});

describe('a bare number where inches are assumed', () => {
  test.each(['.482', '0.482', '1.6', '9.999'])('%s is inches', (text) => {
    expect(read(text, INCHES)).toMatchObject({ value: Number(text), unit: 'in' });
  });

  test('no inch part is that long: thousandths are asked about first', () => {
    const both = [
      { value: 435.5, unit: 'thou' },
      { value: 435.5, unit: 'in' },
    ];
    expect(asked('435.5', INCHES)).toEqual(both);
    expect(asked('435 1/2', INCHES)).toEqual(both);
    expect(asked('10', INCHES)[0]).toEqual({ value: 10, unit: 'thou' });
  });

  test('three places written speak for inches', () => {
    expect(asked('12.250', INCHES)[0]).toEqual({ value: 12.25, unit: 'in' });
  });

  test('another assumed unit is taken as it is', () => {
    expect(read('482', { kind: 'length', assume: 'thou' })).toMatchObject({ value: 482, unit: 'thou' });
    expect(read('12,24', { kind: 'length', assume: 'mm' })).toMatchObject({ value: 12.24, unit: 'mm' });
  });
});

describe('what is asked whatever is assumed', () => {
  // Both uses of the word are common practice, no source.
  test.each(['21.4 mil', '21.4 mils', '21.4 MIL'])('%s', (text) => {
    const both = [
      { value: 21.4, unit: 'mm' },
      { value: 21.4, unit: 'thou' },
    ];
    expect(asked(text, LENGTH)).toEqual(both);
    expect(asked(text, INCHES)).toEqual(both);
  });

  test('the comma of 1,234', () => {
    expect(asked('1,234 mm', LENGTH)).toEqual([
      { value: 1.234, unit: 'mm' },
      { value: 1234, unit: 'mm' },
    ]);
    expect(asked('1,234', { kind: 'ratio' })).toEqual([{ value: 1.234 }, { value: 1234 }]);
  });

  test('a tenth', () => {
    expect(asked('3 tenths', LENGTH)).toEqual([
      { value: 0.0003, unit: 'in' },
      { value: 0.3, unit: 'in' },
    ]);
  });
});

test.each(['.482', '482', '7/16', '1 5/8', '12.24'])('%s without a unit is no length', (text) => {
  const fault = refused(text, LENGTH);
  expect(fault.code).toBe('wrong-dimension');
  expect(fault.detail).toContain('add one of in, thou, mm, um');
});
