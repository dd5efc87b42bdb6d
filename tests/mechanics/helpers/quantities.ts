import { UNITS, type Unit } from '../../../shared/quantities/units.ts';

/** A quantity as a request writes it. */
export const quantity = (value: number, unit: Unit) => ({ value, unit });

const of = (unit: Unit) => (value: number) => quantity(value, unit);

export const inches = of('in');
export const mm = of('mm');
export const lbf = of('lbf');
export const newtons = of('N');
export const lbfPerInch = of('lbf/in');
export const deg = of('deg');
export const celsius = of('degC');

/** The same quantity in another unit of its dimension. */
export function inUnit(quantity: { value: number; unit: Unit }, unit: Unit): { value: number; unit: Unit } {
  return { value: (quantity.value * UNITS[quantity.unit].toSi) / UNITS[unit].toSi, unit };
}
