import { z } from 'zod';
import { formatQuantity } from '../../../shared/quantities/format.ts';
import { isUnit, type Quantity, type Unit } from '../../../shared/quantities/units.ts';

const quantity = z.object({ value: z.number(), unit: z.string(), side: z.string().optional() });

/** Digits a bench works with; the JSON answer beside it has them all. */
const PLACES: Partial<Record<Unit, number>> = {
  in: 4,
  mm: 3,
  deg: 2,
  lbf: 1,
  N: 1,
  'lbf/in': 1,
  'N/mm': 2,
  Hz: 1,
  psi: 0,
  GPa: 2,
};
const MINUS = '\u2212';

/** A bare number with six digits, zeros at the end left off. */
function bareText(value: number): string {
  if (value === 0) return '0';
  if (Number.isInteger(value)) return String(value).replace('-', MINUS);
  const short = String(Number(value.toPrecision(6)));
  return short.replace(/^(-?)0\./, '$1.').replace('-', MINUS);
}

function quantityText({ value, unit }: Quantity): string {
  const places = PLACES[unit];
  const short = places === undefined ? Number(value.toPrecision(6)) : Number(value.toFixed(places));
  // What would be rounded to zero keeps three digits instead.
  const kept = short === 0 && value !== 0 ? Number(value.toPrecision(3)) : short;
  if (kept !== 0 && Math.abs(kept) < 1e-12) return `${value.toExponential(2).replace('-', MINUS)} ${unit}`;
  return formatQuantity({ value: kept, unit });
}

/** One value of an answer as it is read out. */
export function shownValue(value: unknown): string {
  if (typeof value === 'number') return bareText(value);
  if (typeof value === 'string') return value;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  const read = quantity.safeParse(value);
  if (read.success && isUnit(read.data.unit)) {
    const text = quantityText({ value: read.data.value, unit: read.data.unit });
    return read.data.side === undefined ? text : `${text} ${read.data.side}`;
  }
  if (Array.isArray(value)) return value.length === 0 ? 'none' : value.map(shownValue).join('; ');
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value)
      .map(([key, part]) => `${key} ${shownValue(part)}`)
      .join(', ');
  }
  return '';
}
