import { describe, expect, test } from 'vitest';
import { canBe, type FieldRange } from '../../../shared/quantities/field-range.ts';
import { readInField } from '../../../shared/quantities/read-in-field.ts';
import { toSi, type Unit } from '../../../shared/quantities/units.ts';
import { CAN_BE } from '../../../shared/schemas/can-be.ts';

/*
 * What people say across a bench and what it can only mean in that field: common practice, no source. That a `mil` is
 * a thousandth of an inch to one and a millimetre to the other: the trade's own confusion, common practice.
 */

const inches = (text: string, range: FieldRange) =>
  readInField(text, { kind: 'length', assume: 'in', range });
const millimetres = (text: string, range: FieldRange) =>
  readInField(text, { kind: 'length', assume: 'mm', range });
const asked = (reading: ReturnType<typeof readInField>) => {
  if (reading.ok || reading.fault !== undefined) expect.fail(JSON.stringify(reading));
  return reading.ambiguities.map(({ readAs }) => readAs);
};

describe('understood at once', () => {
  test.each<[string, 'in' | 'mm', keyof typeof CAN_BE, number, Unit]>([
    ['.482', 'in', 'valveLift', 0.482, 'in'],
    ['four eighty-two', 'in', 'valveLift', 482, 'thou'],
    ['four thirty-five and a half', 'in', 'partSize', 435.5, 'thou'],
    ['eighteen thou', 'in', 'lash', 18, 'thou'],
    ['eighteen', 'in', 'lash', 18, 'thou'],
    ['18 mil', 'in', 'lash', 18, 'thou'],
    ['18 mil', 'mm', 'lash', 18, 'thou'],
    ['12 mil', 'in', 'valveLift', 12, 'mm'],
    ['500 mil', 'mm', 'valveLift', 500, 'thou'],
    ['seven sixteenths', 'in', 'partSize', 0.4375, 'in'],
    ['twelve point two four millimetres', 'in', 'lobeLift', 12.24, 'mm'],
    ['twelve point two four', 'mm', 'lobeLift', 12.24, 'mm'],
    ['twelve twenty-four', 'mm', 'lobeLift', 12.24, 'mm'],
    ['12,24', 'mm', 'lobeLift', 12.24, 'mm'],
    ['.4', 'mm', 'lash', 0.4, 'mm'],
    ['0', 'in', 'lash', 0, 'in'],
    ['four inches', 'mm', 'bore', 4, 'in'],
    ['.018', 'in', 'lashFound', 0.018, 'in'],
    ['0.03 mm', 'in', 'lashFound', 0.03, 'mm'],
    ['.09', 'in', 'gap', 0.09, 'in'],
    ['.600', 'in', 'gap', 0.6, 'in'],
    ['2.2', 'mm', 'gap', 2.2, 'mm'],
    ['0.4 in', 'in', 'gap', 0.4, 'in'],
    ['one six', 'in', 'springHeight', 1.6, 'in'],
    ['one seven fifty', 'in', 'springHeight', 1750, 'thou'],
  ])('%s, %s, %s', (text, assume, field, value, unit) => {
    const reading = readInField(text, { kind: 'length', assume, range: CAN_BE[field] });
    expect(reading).toMatchObject({ ok: true, value, unit });
  });

  test('loads and rates in the units of the call', () => {
    const load = (text: string, assume: Unit) =>
      readInField(text, { kind: 'load', assume, range: CAN_BE.seatLoad });
    expect(load('a hundred and ten', 'lbf')).toMatchObject({ ok: true, value: 110, unit: 'lbf' });
    expect(load('490', 'N')).toMatchObject({ ok: true, value: 490, unit: 'N' });
    expect(load('110 lb', 'N')).toMatchObject({ ok: true, value: 110, unit: 'lbf' });
  });

  test('turns, where the dial is known', () => {
    const reading = readInField('5 turns 66', {
      kind: 'length',
      assume: 'in',
      perTurn: { value: 0.1, unit: 'in' },
      range: CAN_BE.reading,
    });
    expect(reading).toMatchObject({ ok: true, value: 0.566, unit: 'in' });
  });
});

describe('asked, never changed in silence', () => {
  test.each<[string, keyof typeof CAN_BE, string[]]>([
    ['482', 'lobeLift', ['482 thou = .482 in']],
    ['560', 'valveLift', ['560 thou = .560 in']],
    ['12.24', 'lobeLift', ['12.24 mm']],
    ['14.22', 'valveLift', ['14.22 mm']],
    ['.4', 'lash', ['0.4 mm']],
    ['18', 'lash', ['18 thou = .018 in']],
    ['25', 'reading', ['25 thou = .025 in', '25 mm']],
    ['46', 'springHeight', ['46 mm']],
    ['102', 'bore', ['102 mm']],
    ['.4', 'gap', ['.4 in', '0.4 mm']],
    ['0,8', 'gap', ['.8 in', '0.8 mm']],
    ['2.0', 'gap', ['2.0 in', '2.0 mm']],
    ['.2', 'lashFound', ['.2 in', '0.2 mm']],
    ['.1', 'lash', ['.1 in', '0.1 mm']],
    ['four thirty', 'bore', ['4.30 in', '4.030 in']],
    ['five seven', 'rod', ['5.7 in', '57 mm']],
  ])('%s in an inch call, %s', (text, field, readings) => {
    expect(asked(inches(text, CAN_BE[field]))).toEqual(readings);
  });

  test.each<[string, keyof typeof CAN_BE, string[]]>([
    ['.482', 'valveLift', ['.482 in']],
    ['.018', 'lash', ['.018 in']],
    ['18', 'lash', ['18 thou = .018 in']],
    ['1.8', 'springHeight', ['1.8 in']],
    ['0.03', 'lashFound', ['0.03 mm', '.03 in']],
    ['.100', 'gap', ['0.100 mm', '.100 in']],
    ['7/16', 'partSize', ['7/16 in = .4375 in']],
    ['four eighty-two', 'valveLift', ['4.82 mm', '482 thou = .482 in']],
  ])('%s in a metric call, %s', (text, field, readings) => {
    expect(asked(millimetres(text, CAN_BE[field]))).toEqual(readings);
  });
});

describe('refused, with what came and what is allowed', () => {
  test.each<[string, keyof typeof CAN_BE, string]>([
    ['18 in', 'lash', 'is 18 in; none, or from .0015 in to .100 in is allowed'],
    ['16 mm', 'lash', 'is 16 mm; none, or from .0015 in to .100 in is allowed'],
    ['.4 in', 'lash', 'is .4 in; none, or from .0015 in to .100 in is allowed'],
  ])('%s, %s', (text, field, detail) => {
    const reading = inches(text, CAN_BE[field]);
    expect(reading).toMatchObject({ ok: false, fault: { code: 'out-of-range', detail } });
  });

  test('the range is told in the units of the call', () => {
    const reading = millimetres('18 in', CAN_BE.lash);
    expect(reading).toMatchObject({
      fault: { detail: 'is 18 in; none, or from 0.039 mm to 2.50 mm is allowed' },
    });
  });
});

test('no reading that is taken or offered lies outside what the field can be', () => {
  const texts = ['.4', '4', '18', '.018', '482', '12.24', '1.8', '110', '7/16', 'four eighty-two', '18 mil'];
  for (const range of Object.values<FieldRange>(CAN_BE))
    for (const assume of ['in', 'mm'] as const)
      for (const text of texts) {
        const reading = readInField(text, { kind: 'length', assume, range });
        const found = reading.ok ? [reading] : reading.ambiguities.map(({ quantity }) => quantity);
        for (const each of found)
          if ('unit' in each && each.unit !== undefined)
            expect(canBe(toSi({ value: each.value, unit: each.unit }), range), `${text} ${assume}`).toBe(
              true,
            );
      }
});
