import { z } from 'zod';
import { formatFigure } from '../../../shared/quantities/format.ts';
import { toldIn } from '../../../shared/quantities/spoken-units.ts';
import { isUnit, type Quantity, UNITS } from '../../../shared/quantities/units.ts';

const quantity = z.object({ value: z.number(), unit: z.string(), side: z.string().optional() });

const MINUS = '\u2212';

/** A bare number with six digits, a small one with three, zeros at the end left off. */
function bareText(value: number): string {
  if (value === 0) return '0';
  if (Number.isInteger(value)) return String(value).replace('-', MINUS);
  const short = String(Number(value.toPrecision(Math.abs(value) < 0.1 ? 3 : 6)));
  return short.replace(/^(-?)0\./, '$1.').replace('-', MINUS);
}

function figureOf({ value, unit }: Quantity): string {
  const places = UNITS[unit].shown;
  const short = places === undefined ? Number(value.toPrecision(4)) : Number(value.toFixed(places));
  // What would be rounded to zero keeps three digits instead.
  const kept = short === 0 && value !== 0 ? Number(value.toPrecision(3)) : short;
  if (kept !== 0 && Math.abs(kept) < 1e-12) return value.toExponential(2).replace('-', MINUS);
  return formatFigure({ value: kept, unit });
}

/** `.544` and `in`: a quantity in two parts, so that the figure can stand large; anything else is one figure. */
export function figureAndUnit(value: unknown): { readonly figure: string; readonly unit?: string } {
  const read = quantity.safeParse(value);
  if (!read.success || !isUnit(read.data.unit)) return { figure: shownValue(value) };
  const { value: amount, unit, side } = read.data;
  return {
    figure: figureOf({ value: amount, unit }),
    unit: side === undefined ? toldIn(unit) : `${toldIn(unit)} ${side}`,
  };
}

/** One value of an answer as it is read out. */
export function shownValue(value: unknown): string {
  if (typeof value === 'number') return bareText(value);
  if (typeof value === 'string') return value;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  const read = quantity.safeParse(value);
  if (read.success && isUnit(read.data.unit)) {
    const { figure, unit = '' } = figureAndUnit(value);
    return `${figure} ${unit}`;
  }
  if (Array.isArray(value)) return value.length === 0 ? 'none' : value.map(shownValue).join('; ');
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value)
      .map(([key, part]) => `${key} ${shownValue(part)}`)
      .join(', ');
  }
  return '';
}
