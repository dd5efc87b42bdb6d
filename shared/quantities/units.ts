import { DIMENSIONS, type Dimension, type Unit, type UnitEntry } from './dimensions.ts';

export type { Dimension, Unit } from './dimensions.ts';
export type UnitSystem = 'inch' | 'metric';

/** A number with its unit, as it goes in and out of the service. */
export interface Quantity {
  readonly value: number;
  readonly unit: Unit;
}

/** What the table of dimensions has of a unit, with the dimension it is of. */
interface UnitInfo extends UnitEntry {
  readonly dimension: Dimension;
}

function isDimension(text: string): text is Dimension {
  return Object.hasOwn(DIMENSIONS, text);
}

const DIMENSION_NAMES: readonly Dimension[] = Object.keys(DIMENSIONS).filter(isDimension);

function unitsOfTable(): Readonly<Record<Unit, UnitInfo>>;
function unitsOfTable(): Record<string, UnitInfo> {
  return Object.fromEntries(
    DIMENSION_NAMES.flatMap((dimension) =>
      Object.entries<UnitEntry>(DIMENSIONS[dimension].units).map(([unit, entry]) => [
        unit,
        { ...entry, dimension },
      ]),
    ),
  );
}

/** Every unit of the table of dimensions by its name, in the order of the table. */
export const UNITS = unitsOfTable();

/** The unit that an answer is given in, for `?units=inch` and `?units=metric`. */
export const answerUnit = (dimension: Dimension, system: UnitSystem): Unit => DIMENSIONS[dimension][system];

export function isUnit(text: string): text is Unit {
  return Object.hasOwn(UNITS, text);
}

export function dimensionOf(unit: Unit): Dimension {
  return UNITS[unit].dimension;
}

/** The value in SI base units (metres, newtons, radians, rad/s, hertz, kilograms, pascals, kelvins). */
export function toSi(quantity: Quantity): number {
  return quantity.value * UNITS[quantity.unit].toSi;
}

/** The SI value expressed in `unit`. */
export function fromSi(si: number, unit: Unit): Quantity {
  return { value: si / UNITS[unit].toSi, unit };
}

/** All units of one dimension, in the order of the table. */
export function unitsOf(dimension: Dimension): Unit[] {
  return Object.keys(DIMENSIONS[dimension].units).filter(isUnit);
}
