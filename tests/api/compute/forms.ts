import { expect } from 'vitest';
import { memberOf } from '../../../shared/member.ts';

/** A quantity as it goes over the wire; the units are written out here, not taken from the service's own table. */
export interface Wire {
  readonly value: number;
  readonly unit: string;
}

/** What one of the first is in the second: NIST SP 811, B.8 (inch 25.4 mm, pound .45359237 kg, g 9.80665 m/s²). */
const POUND_FORCE = 0.45359237 * 9.80665;
const METRIC: Readonly<Record<string, readonly [unit: string, factor: number]>> = {
  in: ['mm', 25.4],
  lbf: ['N', POUND_FORCE],
  'lbf/in': ['N/mm', POUND_FORCE / 25.4],
  lb: ['kg', 0.45359237],
  psi: ['GPa', (POUND_FORCE / 0.0254 ** 2) * 1e-9],
  'lb/in3': ['kg/m3', 0.45359237 / 0.0254 ** 3],
  degF: ['K', 5 / 9],
  'in/lbf': ['mm/N', 25.4 / POUND_FORCE],
};

const of = (unit: string) => (value: number) => ({ value, unit });
export const inch = of('in');
export const deg = of('deg');
export const lbf = of('lbf');
export const perInch = of('lbf/in');

export function isWire(part: unknown): part is Wire {
  return (
    typeof part === 'object' && part !== null && Object.hasOwn(part, 'value') && Object.hasOwn(part, 'unit')
  );
}

function mapped(document: unknown, change: (quantity: Wire) => unknown): unknown {
  if (isWire(document)) return change(document);
  if (Array.isArray(document)) return document.map((each) => mapped(each, change));
  if (typeof document !== 'object' || document === null) return document;
  return Object.fromEntries(Object.entries(document).map(([key, part]) => [key, mapped(part, change)]));
}

/** Every quantity of a document in its metric unit. */
export const metric = (document: unknown): unknown =>
  mapped(document, (quantity) => {
    const [unit, factor] = METRIC[quantity.unit] ?? [quantity.unit, 1];
    return { ...quantity, value: quantity.value * factor, unit };
  });

/** Every quantity of a body as a text; an event keeps its side. */
export const texts = (body: unknown): unknown =>
  mapped(body, (quantity) => {
    const side = 'side' in quantity ? ` ${String(quantity.side)}` : '';
    return `${quantity.value} ${quantity.unit}${side}`;
  });

/** Stands for words that the contract leaves open. */
export const WORDS = Symbol('words');

/** Holds an answer to what was derived: numbers to 1e-9 relative (1e-12 about zero), the same fields, no others. */
export function expectDerived(found: unknown, wanted: unknown, at = ''): void {
  if (wanted === WORDS) {
    expect(typeof found === 'string' && found.length > 3, `${at}: ${String(found)}`).toBe(true);
    return;
  }
  if (typeof wanted === 'number') {
    expect(typeof found, at).toBe('number');
    const off = Math.abs(Number(found) - wanted);
    expect(off, `${at}: ${String(found)} against ${wanted}`).toBeLessThanOrEqual(
      1e-9 * Math.abs(wanted) + 1e-12,
    );
    return;
  }
  if (typeof wanted !== 'object' || wanted === null || typeof found !== 'object' || found === null) {
    expect(found, at).toEqual(wanted);
    return;
  }
  expect(Object.keys(found).sort(), `fields at ${at}`).toEqual(Object.keys(wanted).sort());
  for (const [key, part] of Object.entries(wanted)) expectDerived(memberOf(found, key), part, `${at}/${key}`);
}
