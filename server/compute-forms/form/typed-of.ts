import { z } from 'zod';
import { memberOf } from '../../../shared/member.ts';
import type { Fields } from '../../web/forms/read-form.ts';
import type { Control, Entry, Leaf } from './control.ts';

const quantity = z.object({ value: z.number(), unit: z.string(), side: z.string().optional() });
const sharedUnit = z.object({ values: z.array(z.number()), unit: z.string() });

/** A number in full, without the zero before the point. */
const figure = (value: number): string => String(value).replace(/^(-?)0\./, '$1.');

function scalarText(value: unknown): string {
  if (typeof value === 'number') return figure(value);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  const read = quantity.safeParse(value);
  if (read.success) {
    const { value: amount, unit, side } = read.data;
    return side === undefined ? `${figure(amount)} ${unit}` : `${figure(amount)} ${unit} ${side}`;
  }
  return typeof value === 'string' ? value : JSON.stringify(value);
}

function listText(value: unknown, between: string): string {
  const shared = sharedUnit.safeParse(value);
  if (shared.success) {
    return shared.data.values.map((each) => `${figure(each)} ${shared.data.unit}`).join(between);
  }
  return Array.isArray(value) ? value.map(scalarText).join(between) : scalarText(value);
}

function rowText(row: unknown, columns: readonly Leaf[]): string {
  const cells = columns.map((column) => {
    const cell = memberOf(row, column.name);
    return cell === undefined ? '-' : scalarText(cell);
  });
  return cells.join('; ');
}

function entryText(value: unknown, entry: Entry): string {
  switch (entry.as) {
    case 'quantities':
    case 'numbers':
      return listText(value, '\n');
    case 'lines':
      return Array.isArray(value) ? value.map((row) => rowText(row, entry.columns)).join('\n') : '';
    case 'grid':
      return Array.isArray(value) ? value.map((row) => listText(row, '; ')).join('\n') : '';
    case 'json':
      return JSON.stringify(value, null, 1);
    default:
      return scalarText(value);
  }
}

function write(control: Control, value: unknown, fields: Record<string, string>): void {
  if (value === undefined) return;
  switch (control.kind) {
    case 'leaf':
      fields[control.name] = entryText(value, control.entry);
      return;
    case 'group':
      for (const part of control.parts) {
        write(part, memberOf(value, part.name.slice(part.name.lastIndexOf('.') + 1)), fields);
      }
      return;
    default:
      if (!Array.isArray(value)) return;
      for (const [index, row] of value.entries()) write(control.item(index), row, fields);
  }
}

/** The texts that fill a form with a body, such as the worked example's. */
export function typedOf(controls: readonly Control[], body: unknown): Fields {
  const fields: Record<string, string> = {};
  for (const control of controls) write(control, memberOf(body, control.name), fields);
  return fields;
}
