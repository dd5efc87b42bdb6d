import { UNITS, type Unit } from '../../../shared/quantities/units.ts';

const of = (unit: Unit) => (value: number) => ({ value, unit });

/** Quantities as requests write them. */
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
