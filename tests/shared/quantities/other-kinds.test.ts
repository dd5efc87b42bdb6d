import { describe, expect, test } from 'vitest';
import type { NumberKind } from '../../../shared/quantities/read-number.ts';
import { UNITS, unitsOf } from '../../../shared/quantities/units.ts';
import { asked, read, refused } from './reading-helpers.ts';

const cases: [string, NumberKind, number, string, string][] = [
  ['185 lb', 'load', 185, 'lbf', '185 lbf'],
  ['185 LBS', 'load', 185, 'lbf', '185 lbf'],
  ['two eighty-five pounds', 'load', 285, 'lbf', '285 lbf'],
  ['185 lb', 'mass', 185, 'lb', '185 lb'],
  ['420 lb/in', 'rate', 420, 'lbf/in', '420 lbf/in'],
  ['420 pounds per inch', 'rate', 420, 'lbf/in', '420 lbf/in'],
  ['420 lbs/inch', 'rate', 420, 'lbf/in', '420 lbf/in'],
  ['23°', 'angle', 23, 'deg', '23 deg'],
  ['one oh six and a half degrees', 'angle', 106.5, 'deg', '106.5 deg'],
  ['sixty-five hundred RPM', 'speed', 6500, 'rpm', '6500 rpm'],
  ['six thousand five hundred rpm', 'speed', 6500, 'rpm', '6500 rpm'],
  ['60 °F', 'temperature-rise', 60, 'degF', '60 degF'],
  ['11.7e-6 1/K', 'expansion', 11.7e-6, '1/K', '0.0000117 1/K'],
  ['11.7e-6 /°C', 'expansion', 11.7e-6, '1/K', '0.0000117 1/K'],
  ['11.5e6 psi', 'pressure', 11.5e6, 'psi', '11500000 psi'],
  ['7850 kg/m³', 'density', 7850, 'kg/m3', '7850 kg/m3'],
];

describe('other kinds', () => {
  test.each(cases)('%s as a %s', (text, kind, value, unit, readAs) => {
    expect(read(text, { kind })).toEqual({ ok: true, value, unit, readAs });
  });

  test.each(Object.entries(UNITS))('the table’s own name %s is read', (unit, { dimension }) => {
    const answer = read(`2.5 ${unit}`, { kind: dimension });
    expect(answer).toMatchObject({ value: 2.5, unit });
    expect(unitsOf(dimension)).toContain(answer.unit);
  });

  test.each(['1.65', '1.65:1', '1.65 to 1', 'one point six five', 'one sixty-five'])(
    '%s is a ratio',
    (text) => {
      expect(read(text, { kind: 'ratio' })).toEqual({ ok: true, value: 1.65, readAs: '1.65' });
    },
  );

  test('a count is whole', () => {
    expect(read('sixteen', { kind: 'count' }).value).toBe(16);
    expect(read('1,234', { kind: 'count' }).value).toBe(1234);
    expect(refused('16.5', { kind: 'count' }).code).toBe('out-of-range');
    expect(refused('-1', { kind: 'count' }).code).toBe('out-of-range');
  });

  test('degrees of a rise are asked unless one is assumed', () => {
    expect(asked('60 deg', { kind: 'temperature-rise' })).toEqual([
      { value: 60, unit: 'degF' },
      { value: 60, unit: 'degC' },
    ]);
    expect(read('60 degrees', { kind: 'temperature-rise', assume: 'degC' }).unit).toBe('degC');
  });
});
