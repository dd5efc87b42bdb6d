import { type FaultCode, InputFaults } from '../../../shared/problems/faults.ts';
import { normaliseText } from '../../../shared/quantities/normalise-text.ts';
import type { NumberRead, NumberRefused } from '../../../shared/quantities/number-types.ts';
import { dimensionOf, type Quantity } from '../../../shared/quantities/units.ts';
import { readBare } from '../../../shared/schemas/read-bare.ts';
import { fromValueAndUnit } from '../../../shared/schemas/read-quantity.ts';
import type { ReadKind } from './number-fields.ts';

function refuse(pointer: string, code: FaultCode, detail: string): never {
  throw new InputFaults([{ pointer, code, detail }]);
}

/** Throws the fault of a text that can't be read; where the dial's travel per turn is missing, there. */
export function refuseUnread({ fault }: NumberRefused, text: string): never {
  const atTurn = fault.code === 'required' && normaliseText(text) !== '';
  refuse(atTurn ? '/perTurn' : '/text', fault.code, fault.detail);
}

/**
 * Holds a quantity that was read to what a machine part can have.
 *
 * @param quantity [any] as it was read
 * @throws impossible-input when it is beyond any machine part
 */
export function holdQuantity(quantity: Quantity): Quantity {
  const held = fromValueAndUnit(quantity.value, quantity.unit, dimensionOf(quantity.unit), { sign: 'any' });
  if (!held.ok) refuse('/text', held.code, held.detail);
  return quantity;
}

/**
 * Holds a bare number that was read to its kind: a ratio above zero and up to 100, turns up to 1000 either way.
 *
 * @param read [1] as it was read
 * @param kind [1] `ratio` or `turns`
 * @throws out-of-range when a ratio is zero or negative
 * @throws impossible-input when it is beyond any machine part
 */
export function holdBare(read: NumberRead, kind: ReadKind): number {
  const held = readBare(read.value, kind === 'ratio' ? { above: 0, beyond: 100 } : { beyond: 1000 });
  return held.ok ? held.value : refuse('/text', held.code, held.detail);
}
