import { isObject, memberOf } from '../../../shared/member.ts';
import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { formatQuantity } from '../../../shared/quantities/format.ts';
import { isUnit, type Quantity } from '../../../shared/quantities/units.ts';
import type { Working } from '../../records/workings/workings.ts';

/** As many inputs as are read at a glance. */
const FEW = 6;
/** As many rows of one input as are read back each; a longer list is told by its count. */
const FEW_ROWS = 4;

function quantityOf(value: unknown): Quantity | undefined {
  const [amount, unit] = [memberOf(value, 'value'), memberOf(value, 'unit')];
  return typeof amount === 'number' && typeof unit === 'string' && isUnit(unit)
    ? { value: amount, unit }
    : undefined;
}

/** `31.5 deg and 28.5 deg`: a few readings are read back like any other entry. */
function rowsSaid(rows: readonly unknown[]): string {
  const said = rows.length > FEW_ROWS ? [] : rows.flatMap((row) => valueSaid(row) ?? []);
  return said.length === rows.length && said.length > 0 ? said.join(' and ') : `${rows.length} rows`;
}

function valueSaid(value: unknown): string | undefined {
  if (typeof value === 'string' || typeof value === 'number') return String(value);
  if (Array.isArray(value)) return rowsSaid(value);
  if (!isObject(value)) return undefined;
  const readAs = memberOf(value, 'readAs');
  if (typeof readAs === 'string') return asEntered(readAs);
  const typed = memberOf(value, 'typed');
  if (typeof typed === 'string') return typed;
  const quantity = quantityOf(value);
  const told = memberOf(value, 'side');
  if (quantity !== undefined)
    return [asEntered(formatQuantity(quantity)), ...(typeof told === 'string' ? [told] : [])].join(' ');
  return undefined;
}

/** `pointerOff` is `pointer off`. */
const nameSaid = (name: string): string => name.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();

/** What went into a kept computation, to be read back: `before 60 deg, after 145.5 deg`. */
export function inputsSaid({ inputs }: Pick<Working, 'inputs'>): string {
  const said = (isObject(inputs) ? Object.entries(inputs) : []).flatMap(([name, value]) => {
    const text = valueSaid(value);
    return text === undefined ? [] : [`${nameSaid(name)} ${text}`];
  });
  const more = said.length - FEW;
  return [...said.slice(0, FEW), ...(more > 0 ? [`${more} more`] : [])].join(', ');
}
