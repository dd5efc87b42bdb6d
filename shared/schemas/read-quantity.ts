import { memberOf } from '../member.ts';
import type { FaultCode } from '../problems/faults.ts';
import { DIMENSIONS } from '../quantities/dimensions.ts';
import type { FieldRange } from '../quantities/field-range.ts';
import { readNumber } from '../quantities/read-number.ts';
import { type Dimension, isUnit, UNITS, type Unit, unitsOf } from '../quantities/units.ts';

/** The outcome of reading one quantity of a request: the SI value, or the fault. */
export type QuantityReading =
  | { readonly ok: true; readonly si: number }
  | { readonly ok: false; readonly at?: string; readonly code: FaultCode; readonly detail: string };

type Sign = 'positive' | 'not-negative' | 'any';
export interface QuantityRange {
  /** Default `positive`. */
  readonly sign?: Sign;
  /** The code for a value at or below zero where that can't be; default `out-of-range`. */
  readonly below?: 'out-of-range' | 'impossible-input';
  /** What it can be where it is of a call; by itself it is whatever a machine part can be. */
  readonly canBe?: FieldRange;
}

const fault = (code: FaultCode, detail: string, at?: string): QuantityReading =>
  at === undefined ? { ok: false, code, detail } : { ok: false, code, detail, at };

function allowedUnits(dimension: Dimension): string {
  return unitsOf(dimension).join(', ');
}

function withinRange(si: number, dimension: Dimension, range: QuantityRange): QuantityReading {
  // The slack keeps exactly 100 in from failing by a rounding of the conversion.
  if (Math.abs(si) > DIMENSIONS[dimension].most * (1 + 1e-12)) {
    return fault('impossible-input', `is beyond any machine part`);
  }
  const sign = range.sign ?? 'positive';
  if (sign === 'positive' && si <= 0) return fault(range.below ?? 'out-of-range', 'must be above zero');
  if (sign === 'not-negative' && si < 0) return fault(range.below ?? 'out-of-range', 'must not be negative');
  return { ok: true, si };
}

/** The one unit of a list of bare numbers. */
export function sharedUnit(
  unit: unknown,
  dimension: Dimension,
): { readonly ok: true; readonly unit: Unit } | { ok: false; code: FaultCode; detail: string } {
  const allowed = allowedUnits(dimension);
  const no = (code: FaultCode, detail: string) => ({ ok: false as const, code, detail });
  if (unit === undefined) return no('required', `is missing: one of ${allowed}`);
  if (typeof unit !== 'string' || !isUnit(unit)) {
    return no('unknown-unit', `is not a unit that is known; allowed: ${allowed}`);
  }
  if (UNITS[unit].dimension === dimension) return { ok: true, unit };
  return no('wrong-dimension', `is no unit of a ${dimension}; allowed: ${allowed}`);
}

export function fromValueAndUnit(
  value: unknown,
  unit: unknown,
  dimension: Dimension,
  range: QuantityRange,
): QuantityReading {
  if (unit === undefined) return fault('required', `needs a unit: ${allowedUnits(dimension)}`, 'unit');
  if (value === undefined) return fault('required', 'needs a value', 'value');
  if (typeof unit !== 'string' || !isUnit(unit)) {
    return fault('unknown-unit', `has a unit that is not known; allowed: ${allowedUnits(dimension)}`);
  }
  if (UNITS[unit].dimension !== dimension) {
    return fault('wrong-dimension', `must be a ${dimension} (${allowedUnits(dimension)}), not in ${unit}`);
  }
  if (typeof value !== 'number') return fault('not-a-number', 'must have a number as its value');
  if (!Number.isFinite(value)) return fault('out-of-range', 'must be a finite number');
  return withinRange(value * UNITS[unit].toSi, dimension, range);
}

/** Reads `{ value, unit }` or a text as a quantity of `dimension`. */
export function readQuantity(raw: unknown, dimension: Dimension, range: QuantityRange): QuantityReading {
  if (raw === undefined) return fault('required', `is missing: a ${dimension} with its unit`);
  if (typeof raw === 'string') return fromText(raw, dimension, range);
  if (typeof raw === 'number') {
    return fault('wrong-dimension', `is a bare number; give a unit: ${allowedUnits(dimension)}`);
  }
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    return fault('not-a-number', `must be { "value", "unit" } or a text such as ".482 in"`);
  }
  const unknown = Object.keys(raw).find((key) => key !== 'value' && key !== 'unit');
  if (unknown !== undefined) return fault('unknown-field', 'is not a part of a quantity', unknown);
  return fromValueAndUnit(memberOf(raw, 'value'), memberOf(raw, 'unit'), dimension, range);
}

function fromText(text: string, dimension: Dimension, range: QuantityRange): QuantityReading {
  const read = readNumber(text, { kind: dimension });
  if (read.ok) {
    if (read.unit === undefined) return fault('wrong-dimension', `needs a unit: ${allowedUnits(dimension)}`);
    return fromValueAndUnit(read.value, read.unit, dimension, range);
  }
  if (read.fault) return fault(read.fault.code, read.fault.detail);
  const ways = read.ambiguities.map((each) => each.readAs).join(' or ');
  return fault('unknown-unit', `could mean ${ways}; write it with its unit`);
}
