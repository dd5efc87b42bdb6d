import { describe, expect, test } from 'vitest';
import type { AnyComputation } from '../../../server/mechanics/kit/computation.ts';
import type { Unit } from '../../../shared/quantities/units.ts';
import { expectSame } from './near.ts';
import { runner } from './runner.ts';

type Body = Readonly<Record<string, unknown>>;

export interface GoodInput {
  /** A body that is answered. */
  readonly body: Body;
  /** Top-level fields that are quantities, each with the unit to try it in. */
  readonly quantities?: Readonly<Record<string, Unit>>;
  /** Top-level fields that are bare numbers. */
  readonly numbers?: readonly string[];
  /** Fields that may be left out. */
  readonly optional?: readonly string[];
  /** Quantities that may be negative. */
  readonly signed?: readonly string[];
  /** Quantities whose negative value is impossible, not only out of range. */
  readonly impossibleBelow?: readonly string[];
}

const wrongUnit = (unit: Unit): Unit => (unit === 'lbf' || unit === 'N' ? 'in' : 'lbf');

/** The bad input that every computation must refuse at the right place, and its worked example. */
export function describeContract(computation: AnyComputation, good: GoodInput): void {
  const { registered, run, faults } = runner(computation);
  const { body, quantities = {}, numbers = [], optional = [], signed = [], impossibleBelow = [] } = good;
  const withField = (field: string, value: unknown): Body => ({ ...body, [field]: value });
  const without = (field: string): Body =>
    Object.fromEntries(Object.entries(body).filter(([name]) => name !== field));

  describe(`${registered.name}: worked example and bad input`, () => {
    test('the worked example gives its result', () => {
      expectSame(run(registered.example.inputs).result, registered.example.result);
    });

    test('every answer says its basis, and no text calls anything safe', () => {
      const answer = run(registered.example.inputs);
      const told = [...answer.assumptions, ...answer.cautions, ...Object.values(answer.basis)];
      expect(told.join(' ')).not.toMatch(/\bsafe/i);
      expect(Object.values(answer.basis).every((text) => text.length > 10)).toBe(true);
    });

    test.each(Object.keys(body).filter((field) => !optional.includes(field)))('%s is asked for', (field) => {
      expect(faults(without(field))).toEqual([`/${field} required`]);
    });

    test.each(Object.entries(quantities))('%s must be a quantity of its own dimension', (field, unit) => {
      expect(faults(withField(field, 1))).toEqual([`/${field} wrong-dimension`]);
      expect(faults(withField(field, { value: 1, unit: wrongUnit(unit) }))).toEqual([
        `/${field} wrong-dimension`,
      ]);
      expect(faults(withField(field, { value: 1, unit: 'cubit' }))).toEqual([`/${field} unknown-unit`]);
      expect(faults(withField(field, { value: 'NaN', unit }))).toEqual([`/${field} not-a-number`]);
      expect(faults(withField(field, { value: Number.NaN, unit }))).toEqual([`/${field} out-of-range`]);
      expect(faults(withField(field, { value: Number.POSITIVE_INFINITY, unit }))).toEqual([
        `/${field} out-of-range`,
      ]);
      expect(faults(withField(field, { value: 1e308, unit }))).toEqual([`/${field} impossible-input`]);
      expect(faults(withField(field, { value: 1, unit, tolerance: 1 }))).toEqual([
        `/${field}/tolerance unknown-field`,
      ]);
      expect(faults(withField(field, { value: 1 }))).toEqual([`/${field}/unit required`]);
      expect(faults(withField(field, 'NaN'))).toEqual([`/${field} not-a-number`]);
      expect(faults(withField(field, Array(100_000).fill(1)))).toEqual([`/${field} not-a-number`]);
    });

    test.each(Object.entries(quantities).filter(([field]) => !signed.includes(field)))(
      '%s must not be negative',
      (field, unit) => {
        const code = impossibleBelow.includes(field) ? 'impossible-input' : 'out-of-range';
        expect(faults(withField(field, { value: -0.001, unit }))).toEqual([`/${field} ${code}`]);
      },
    );

    test.each(numbers)('%s must be a bare number', (field) => {
      expect(faults(withField(field, { value: 1, unit: 'in' }))).toEqual([`/${field} wrong-dimension`]);
      expect(faults(withField(field, '1.6'))).toEqual([`/${field} not-a-number`]);
      expect(faults(withField(field, Number.NaN))).toEqual([`/${field} out-of-range`]);
      expect(faults(withField(field, 1e308))).toEqual([`/${field} impossible-input`]);
      expect(faults(withField(field, null))).toEqual([`/${field} not-a-number`]);
    });

    test('every fault of a body is told at its own place, once', () => {
      const fields = Object.keys(body);
      const told = faults(Object.fromEntries(fields.map((field) => [field, null])));
      expect(told.map((fault) => fault.split(' ')[0])).toEqual(fields.map((field) => `/${field}`).sort());
    });

    test('fields it does not know are refused, the prototype too', () => {
      expect(faults({ ...body, colour: 'red' })).toEqual(['/colour unknown-field']);
      const text = JSON.stringify(body).replace(/^\{/, '{"__proto__":{"polluted":true},');
      expect(faults(JSON.parse(text))).toEqual(['/__proto__ unknown-field']);
    });

    test.each([[null], [undefined], [[]], ['text'], [7], [true]])(
      'a body of %j is refused at the root',
      (bad) => {
        expect(faults(bad).every((fault) => fault.startsWith(' '))).toBe(true);
      },
    );

    test('a faulty field says what came', () => {
      const field = Object.keys(body)[0] ?? '';
      try {
        run(withField(field, 'nonsense'));
        expect.unreachable();
      } catch (error) {
        expect(error).toMatchObject({ faults: [{ pointer: `/${field}`, received: 'nonsense' }] });
      }
    });
  });
}
