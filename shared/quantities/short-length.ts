import { formatFigure, formatQuantity } from './format.ts';
import { toldIn } from './spoken-units.ts';
import { fromSi, type Quantity } from './units.ts';

/** Places that a caliper shows, and what is made to a fraction of an inch is written with. */
const FINEST = { in: 4, mm: 2 } as const;

/** Rounded in the unit that it is told in: a figure that is rounded in inches first is cut in millimetres. */
function short(si: number): Quantity {
  const unit = toldIn('in') === 'mm' ? 'mm' : 'in';
  return { value: Number(fromSi(si, unit).value.toFixed(FINEST[unit])), unit };
}

/** `.4355 in`, `11.06 mm`: a length [m] with no more places than are read, and no fewer than it is written with. */
export const shortLength = (si: number): string => formatQuantity(short(si));
/** The same without its unit. */
export const shortFigure = (si: number): string => formatFigure(short(si));
