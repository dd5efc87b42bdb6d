import { isObject, memberOf } from '../../../shared/member.ts';
import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { formatNumber, placesOf, writeExact } from '../../../shared/quantities/format.ts';
import { readNumber } from '../../../shared/quantities/read-number.ts';
import { spokenUnits } from '../../../shared/quantities/spoken-units.ts';
import {
  answerUnit,
  type Dimension,
  dimensionOf,
  isUnit,
  UNITS,
  type Unit,
} from '../../../shared/quantities/units.ts';
import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';

/** What is at a dotted path of the specification. */
export function valueAtPath(spec: unknown, path: string): unknown {
  let here: unknown = spec;
  for (const part of path.split('.')) {
    if (!isObject(here) || !Object.hasOwn(here, part)) return undefined;
    here = here[part];
  }
  return here;
}

/** The unit that counts when none is typed. */
const assumedUnit = (dimension: Dimension): Unit => answerUnit(dimension, spokenUnits());

/** An entry as a form shows it: as typed where that still reads the same, else with its unit. */
function quantityText(entry: unknown): string {
  const typed = memberOf(entry, 'typed');
  const value = memberOf(entry, 'value');
  const unit = memberOf(entry, 'unit');
  if (typeof value !== 'number' || typeof unit !== 'string' || !isUnit(unit)) return '';
  if (typeof typed === 'string') {
    const dimension = dimensionOf(unit);
    const assume = assumedUnit(dimension);
    const read = readNumber(typed, { kind: dimension, assume });
    if (read.ok && read.value === value && read.unit === unit) return typed;
  }
  return `${writeExact(value, UNITS[unit].least ?? 0, unit)} ${unit}`;
}

const textsOf = (list: readonly unknown[]): string => list.map(quantityText).join(', ');

/** The text of an entry of the specification; empty where there is none. */
export function specText(spec: BuildSpec, path: string): string {
  const value = valueAtPath(spec, path);
  if (typeof value === 'string') return value;
  if (typeof value === 'number') return formatNumber(value, placesOf(value) ?? 6);
  if (Array.isArray(value)) return textsOf(value);
  return quantityText(value);
}

/** The entry as it was understood, with its unit: for a record, not for a field. */
export function readText(spec: BuildSpec, path: string): string {
  const value = valueAtPath(spec, path);
  const readAs = memberOf(value, 'readAs');
  return typeof readAs === 'string' ? asEntered(readAs) : specText(spec, path);
}
