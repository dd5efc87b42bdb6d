import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/read-number.ts';
import { expectSame } from './helpers/near.ts';
import { runner } from './helpers/runner.ts';

const { registered, run, faults } = runner(computation);
const result = (body: unknown, units: 'inch' | 'metric' = 'inch') => run(body, units).result;
const clear = (quantity: { value: number; unit: string }) => ({
  quantity,
  readAs: expect.any(String),
  ambiguities: [],
});

describe('a number with its unit is read in that unit, whatever units are asked for', () => {
  test.each([
    ['.482 in', 'length', 0.482, 'in'],
    ['482 thou', 'length', 482, 'thou'],
    ['12,24 mm', 'length', 12.24, 'mm'],
    ['7/16 in', 'length', 0.4375, 'in'],
    ['1-5/8"', 'length', 1.625, 'in'],
    ['106 deg', 'angle', 106, 'deg'],
    ['130 lb', 'load', 130, 'lbf'],
    ['350 lb/in', 'rate', 350, 'lbf/in'],
    ['6500 rpm', 'speed', 6500, 'rpm'],
    ['110 g', 'mass', 110, 'g'],
    ['-.002 in', 'length', -0.002, 'in'],
  ])('%s', (text, kind, value, unit) => {
    for (const units of ['inch', 'metric'] as const) {
      expect(result({ text, kind }, units)).toEqual(clear({ value, unit }));
    }
  });
});

describe('what is no quantity', () => {
  test('a ratio', () => {
    expect(result({ text: '1.65:1', kind: 'ratio' })).toEqual({
      ratio: 1.65,
      readAs: '1.65',
      ambiguities: [],
    });
  });

  test('turns, and with the travel per turn the length as well', () => {
    expect(result({ text: '1 1/2', kind: 'turns' })).toMatchObject({ turns: 1.5, ambiguities: [] });
    expectSame(result({ text: '4 turns 82', kind: 'turns', perTurn: '.1 in' }), {
      turns: 4.82,
      quantity: { value: 0.482, unit: 'in' },
      readAs: '4 turns 82 = .482 in',
      ambiguities: [],
    });
    expectSame(result({ text: '3 turns 42', kind: 'turns', perTurn: { value: 1, unit: 'mm' } }), {
      turns: 3.42,
      quantity: { value: 3.42, unit: 'mm' },
      readAs: '3 turns 42 = 3.42 mm',
      ambiguities: [],
    });
  });
});

describe('it asks rather than guesses', () => {
  test('mil: a millimetre or a thousandth', () => {
    expect(result({ text: '3 mil', kind: 'length' })).toMatchObject({
      ambiguities: [{ quantity: { value: 3, unit: 'mm' } }, { quantity: { value: 3, unit: 'thou' } }],
    });
    expect(result({ text: '3 mil', kind: 'length' })).not.toHaveProperty('quantity');
  });

  test('a number without a unit is taken in the unit assumed, and said so; with none assumed it is refused', () => {
    expect(result({ text: '.482', kind: 'length', assume: 'in' })).toEqual(
      clear({ value: 0.482, unit: 'in' }),
    );
    expect(run({ text: '.482', kind: 'length', assume: 'in' }).assumptions).toEqual([
      'a number without a unit means in',
    ]);
    expect(faults({ text: '.482', kind: 'length' })).toEqual(['/text wrong-dimension']);
  });

  test('482 where inches are assumed: thousandths first, then inches', () => {
    expect(result({ text: '482', kind: 'length', assume: 'in' })).toMatchObject({
      ambiguities: [{ quantity: { value: 482, unit: 'thou' } }, { quantity: { value: 482, unit: 'in' } }],
    });
  });

  test('1,234 is asked', () => {
    expect(result({ text: '1,234 in', kind: 'length' })).toMatchObject({
      ambiguities: [{ quantity: { value: 1.234 } }, { quantity: { value: 1234 } }],
    });
  });
});

describe('what it refuses, and where', () => {
  test.each([
    [{ text: '', kind: 'length' }, ['/text required']],
    [{ text: '   ', kind: 'length' }, ['/text required']],
    [{ kind: 'length' }, ['/text required']],
    [{ text: '.482 in' }, ['/kind required']],
    [{}, ['/kind required', '/text required']],
    [{ text: 'nonsense', kind: 'length' }, ['/text not-a-number']],
    [{ text: 'NaN', kind: 'length' }, ['/text not-a-number']],
    [{ text: 'Infinity in', kind: 'length' }, ['/text not-a-number']],
    [{ text: '1/0 in', kind: 'length' }, ['/text not-a-number']],
    [{ text: '.482 cubits', kind: 'length' }, ['/text unknown-unit']],
    [{ text: '.482 in', kind: 'load' }, ['/text wrong-dimension']],
    [{ text: '1.6 in', kind: 'ratio' }, ['/text wrong-dimension']],
    [{ text: '200 in', kind: 'length' }, ['/text impossible-input']],
    [{ text: '500', kind: 'ratio' }, ['/text impossible-input']],
    [{ text: '-1.6', kind: 'ratio' }, ['/text out-of-range']],
    [{ text: '2000 turns', kind: 'turns' }, ['/text impossible-input']],
    [{ text: '.482', kind: 'length', assume: 'lbf' }, ['/assume wrong-dimension']],
    [{ text: '.482', kind: 'length', assume: 'cubit' }, ['/assume unknown-unit']],
    [{ text: '.482', kind: 'length', assume: 7 }, ['/assume unknown-unit']],
    [{ text: '4 turns 82', kind: 'turns' }, ['/perTurn required']],
    [{ text: '4 turns 82', kind: 'turns', perTurn: '-.1 in' }, ['/perTurn out-of-range']],
    [{ text: '4 turns 82', kind: 'turns', perTurn: '1 lbf' }, ['/perTurn wrong-dimension']],
    [{ text: 0.482, kind: 'length' }, ['/text not-allowed']],
    [{ text: '.482 in', kind: 'size' }, ['/kind not-allowed']],
    [{ text: '.482 in', kind: 'length', unit: 'in' }, ['/unit unknown-field']],
    [JSON.parse('{"text":".482 in","kind":"length","__proto__":{"a":1}}'), ['/__proto__ unknown-field']],
    [{ text: '1'.repeat(100_000), kind: 'length' }, ['/text not-allowed']],
    [{ text: `${'9'.repeat(190)} in`, kind: 'length' }, ['/text impossible-input']],
  ])('%j', (body, refused) => {
    expect(faults(body)).toEqual(refused);
  });

  test.each([[null], [[]], ['text'], [7]])('a body of %j is refused at the root', (bad) => {
    expect(faults(bad).every((fault) => fault.startsWith(' '))).toBe(true);
  });
});

test('the worked example gives its result', () => {
  expectSame(result(registered.example.inputs), registered.example.result);
});
