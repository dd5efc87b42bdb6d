import { describe, expect, test } from 'vitest';
import { asked, INCHES, LENGTH, read } from './reading-helpers.ts';

// How lengths are said across a bench is common practice, no source.
describe('parts of a millimetre', () => {
  test.each([
    ['forty hundredths mm', 0.4],
    ['18 hundredths of a millimetre', 0.18],
    ['four tenths of a mm', 0.4],
  ])('%s', (text, value) => {
    expect(read(text, LENGTH)).toMatchObject({ value, unit: 'mm' });
  });
});

describe('spoken where inches are assumed', () => {
  test.each([
    ['four thirty-five and a half', 435.5, '435.5 thou = .4355 in'],
    ['Four Thirty Five And A Half', 435.5, '435.5 thou = .4355 in'],
    ['eight forty-two', 842, '842 thou = .842 in'],
    ['eight four two', 842, '842 thou = .842 in'],
    ['four eighty', 480, '480 thou = .480 in'],
    ['four hundred and eighty-two', 482, '482 thou = .482 in'],
    ['eighteen hundred', 1800, '1800 thou = 1.800 in'],
    ['oh oh six', 6, '6 thou = .006 in'],
    ['oh sixty', 60, '60 thou = .060 in'],
    ['minus oh forty', -40, '\u221240 thou = \u2212.040 in'],
  ])('%s is thousandths', (text, value, readAs) => {
    expect(read(text, INCHES)).toEqual({ ok: true, value, unit: 'thou', readAs });
  });

  test.each([
    ['point four eight two', 0.482],
    ['point oh six', 0.06],
    ['one point six', 1.6],
    ['seven sixteenths', 0.4375],
    ['one and five eighths', 1.625],
    ['twenty and three sixteenths', 20.1875],
    ['five thirty-seconds', 0.15625],
    ['three quarters of an inch', 0.75],
  ])('%s is inches', (text, value) => {
    expect(read(text, INCHES)).toMatchObject({ value, unit: 'in' });
  });

  test.each([
    ['oh six', { value: 6, unit: 'thou' }, { value: 0.06, unit: 'in' }],
    ['four two', { value: 42, unit: 'thou' }, { value: 0.42, unit: 'in' }],
    ['twelve fifty', { value: 1250, unit: 'thou' }, { value: 0.125, unit: 'in' }],
    ['forty-two', { value: 42, unit: 'thou' }, { value: 42, unit: 'in' }],
    ['twelve and a quarter', { value: 12.25, unit: 'thou' }, { value: 12.25, unit: 'in' }],
    ['seven', { value: 7, unit: 'in' }, { value: 7, unit: 'thou' }],
  ])('%s is asked', (text, first, second) => {
    expect(asked(text, INCHES)).toEqual([first, second]);
  });
});

describe('spoken with a unit', () => {
  test.each([
    ['eight forty-two thou', 842, 'thou'],
    ['twelve and a quarter inches', 12.25, 'in'],
    ['five and a half thousandths', 5.5, 'thou'],
    ['half a thou', 0.5, 'thou'],
    ['ten thousandths', 10, 'thou'],
    ['point four eight two inches', 0.482, 'in'],
    ['oh sixty inches', 0.06, 'in'],
  ])('%s', (text, value, unit) => {
    expect(read(text, LENGTH)).toMatchObject({ value, unit });
  });

  test('digits in a row leave the point open', () => {
    expect(asked('twelve twenty-four mm', LENGTH)).toEqual([
      { value: 12.24, unit: 'mm' },
      { value: 1224, unit: 'mm' },
    ]);
    expect(asked('eight forty-two inches', LENGTH)).toEqual([
      { value: 0.842, unit: 'in' },
      { value: 842, unit: 'in' },
    ]);
    expect(asked('five ten-thousandths', LENGTH)).toEqual([
      { value: 0.0005, unit: 'in' },
      { value: 510, unit: 'thou' },
    ]);
  });

  test('without a unit and with none assumed it is asked', () => {
    expect(asked('eight forty-two', LENGTH)).toEqual([
      { value: 842, unit: 'thou' },
      { value: 8.42, unit: 'mm' },
    ]);
  });
});
