import { turnsOfParts } from '../../../shared/quantities/part-turns.ts';
import { readInField } from '../../../shared/quantities/read-in-field.ts';
import { readNumber } from '../../../shared/quantities/read-number.ts';
import { whichSaid } from '../../../shared/quantities/which-said.ts';
import { pickedFrom, pickName } from '../../web/forms/picked-reading.ts';
import type { Fields, FormFault } from '../../web/forms/read-form.ts';
import type { Control, Entry, Group, Leaf } from './control.ts';

interface Built {
  readonly body: unknown;
  /** What the schema can't tell, such as a line with an entry too many. */
  readonly faults: readonly FormFault[];
}

/** What is read, and what is found wrong on the way. */
interface Form {
  readonly fields: Fields;
  /** Of a call: its numbers are read by what each field can be. */
  readonly ofCall: boolean;
  readonly faults: FormFault[];
}

/** The parts of a list: a line, a semicolon or a comma with a space ends one. */
const splitList = (text: string): string[] =>
  text
    .split(/[\r\n;]+|,\s+/)
    .map((each) => each.trim())
    .filter((each) => each !== '');

const splitRow = (line: string): string[] => line.split(/\s*(?:;|\t|,\s)\s*/).map((each) => each.trim());

const linesOf = (text: string): string[] => text.split(/\r?\n/).filter((line) => line.trim() !== '');

type OfQuantity = Extract<Entry, { dimension: unknown }>;

/** A quantity as it was understood; what can't be read goes on as typed, so that the schema refuses it. */
function quantityFrom(text: string, entry: OfQuantity): unknown {
  const read = readNumber(text, { kind: entry.dimension, assume: entry.unit });
  return read.ok ? { value: read.value, unit: read.unit ?? entry.unit } : text;
}

/** The same of a call: what it can be there counts, and a number that can be two things is asked about. */
function quantityOfCall(text: string, entry: OfQuantity, name: string, form: Form): unknown {
  const { dimension, unit: assume, canBe: range } = entry;
  if (range === undefined) return quantityFrom(text, entry);
  const picked = pickedFrom(text, form.fields[pickName(name)], { dimension, assume, canBe: range });
  if (picked !== undefined) return picked;
  const read = readInField(text, { kind: dimension, assume, range });
  if (read.ok) return { value: read.value, unit: read.unit ?? assume };
  const ambiguities = read.ambiguities.flatMap(({ quantity, ...rest }) =>
    'unit' in quantity ? [{ ...rest, quantity }] : [],
  );
  const detail = read.fault?.detail ?? whichSaid(text, ambiguities);
  form.faults.push({ field: name, detail, ...(ambiguities.length === 0 ? {} : { ambiguities }) });
  return text;
}

function numberFrom(text: string, kind: 'ratio' | 'turns' = 'ratio'): unknown {
  const parts = kind === 'turns' ? turnsOfParts(text) : undefined;
  if (parts !== undefined) return parts;
  const read = readNumber(text, { kind });
  return read.ok ? read.value : text;
}

function truthFrom(text: string): unknown {
  return text === 'yes' ? true : text === 'no' ? false : text;
}

function jsonFrom(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return text;
  }
}

function rowFrom(line: string, row: number, name: string, columns: readonly Leaf[], form: Form) {
  const cells = splitRow(line);
  if (cells.length > columns.length) {
    const names = columns.map((column) => column.label.toLowerCase()).join('; ');
    form.faults.push({ field: name, detail: `line ${row + 1} has ${cells.length} entries; write ${names}` });
  }
  const item: Record<string, unknown> = {};
  columns.forEach((column, index) => {
    const cell = cells[index] ?? '';
    if (cell !== '' && cell !== '-') item[column.name] = entryFrom(cell, column.entry, name, form);
  });
  return item;
}

function entryFrom(text: string, entry: Entry, name: string, form: Form): unknown {
  const quantity = (each: string, of: OfQuantity) =>
    form.ofCall ? quantityOfCall(each, of, name, form) : quantityFrom(each, of);
  switch (entry.as) {
    case 'quantity':
      return quantity(text, entry);
    case 'quantities':
      return splitList(text).map((each) => quantity(each, entry));
    case 'number':
      return numberFrom(text);
    case 'turns':
      return numberFrom(text, 'turns');
    case 'numbers':
      return splitList(text).map((each) => numberFrom(each));
    case 'truth':
      return truthFrom(text);
    case 'json':
      return jsonFrom(text);
    case 'lines':
      return linesOf(text).map((line, row) => rowFrom(line, row, name, entry.columns, form));
    case 'grid':
      return linesOf(text).map((line) => entryFrom(splitRow(line).join('\n'), entry.cell, name, form));
    default:
      return text;
  }
}

function groupFrom(group: Group, form: Form): unknown {
  const body: Record<string, unknown> = {};
  for (const part of group.parts) {
    const value = valueFrom(part, form);
    if (value !== undefined) body[part.name.slice(part.name.lastIndexOf('.') + 1)] = value;
  }
  const empty = Object.keys(body).length === 0;
  // With nothing typed a group that is wanted stays, so that each of its entries is asked for by name.
  return empty && group.optional ? undefined : body;
}

/** Numbers of the rows of a repeated group that anything was typed into. */
export function rowsTyped(name: string, fields: Fields): number[] {
  const rows = new Set<number>();
  for (const [field, text] of Object.entries(fields)) {
    if (!field.startsWith(`${name}.`) || text.trim() === '') continue;
    const index = /^\d{1,4}(?=\.)/.exec(field.slice(name.length + 1))?.[0];
    if (index !== undefined) rows.add(Number(index));
  }
  return [...rows].sort((a, b) => a - b);
}

function valueFrom(control: Control, form: Form): unknown {
  const { fields } = form;
  switch (control.kind) {
    case 'group':
      return groupFrom(control, form);
    case 'repeat': {
      const rows = rowsTyped(control.name, fields);
      return rows.length === 0 ? undefined : rows.map((row) => groupFrom(control.item(row), form));
    }
    default: {
      const text = fields[control.name] ?? '';
      return text.trim() === '' ? undefined : entryFrom(text, control.entry, control.name, form);
    }
  }
}

/** The JSON body that a form's typed texts stand for: the page then computes by the same call as a program. */
export function bodyOf(controls: readonly Control[], fields: Fields, ofCall = false): Built {
  const form: Form = { fields, ofCall, faults: [] };
  const whole: Group = { kind: 'group', name: '', label: '', about: '', optional: false, parts: controls };
  return { body: groupFrom(whole, form), faults: form.faults };
}
