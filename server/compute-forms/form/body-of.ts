import type { Ambiguity } from '../../../shared/quantities/number-types.ts';
import { readInField } from '../../../shared/quantities/read-in-field.ts';
import { readNumber } from '../../../shared/quantities/read-number.ts';
import { saysTurns } from '../../../shared/quantities/turns-reading.ts';
import type { Fields, FormFault } from '../../web/forms/read-form.ts';
import type { Control, Entry, Group, Leaf } from './control.ts';

interface Built {
  readonly body: unknown;
  /** What the schema can't tell, such as a line with an entry too many. */
  readonly faults: readonly FormFault[];
}

/** The parts of a list: a line, a semicolon or a comma with a space ends one. */
const splitList = (text: string): string[] =>
  text
    .split(/[\r\n;]+|,\s+/)
    .map((each) => each.trim())
    .filter((each) => each !== '');

const splitRow = (line: string): string[] => line.split(/\s*(?:;|\t|,\s)\s*/).map((each) => each.trim());

const linesOf = (text: string): string[] => text.split(/\r?\n/).filter((line) => line.trim() !== '');

/** An entry that can be something else than it says is asked about, as every entry of a call is. */
const askedWhich = (text: string, ambiguities: readonly Ambiguity[]): string =>
  `came as ${text.trim()}. Is it ${ambiguities.map(({ readAs }) => readAs).join(', or ')}? Write it with its unit`;

/** A quantity as it was understood; what can't be read goes on as typed, so that the schema refuses it. */
function quantityFrom(
  text: string,
  { dimension, unit, canBe }: Extract<Entry, { dimension: unknown }>,
  name: string,
  faults: FormFault[],
): unknown {
  const options = { kind: dimension, assume: unit };
  const read =
    canBe === undefined ? readNumber(text, options) : readInField(text, { ...options, range: canBe });
  if (!read.ok && canBe !== undefined) {
    const detail = read.fault === undefined ? askedWhich(text, read.ambiguities) : read.fault.detail;
    faults.push({ field: name, detail });
    return undefined;
  }
  const entry = { unit };
  return read.ok ? { value: read.value, unit: read.unit ?? entry.unit } : text;
}

function numberFrom(text: string): unknown {
  // `half a turn` is a number of turns, whether the word stands there or not.
  const read = readNumber(text, { kind: saysTurns(text) ? 'turns' : 'ratio' });
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

function rowFrom(line: string, row: number, name: string, columns: readonly Leaf[], faults: FormFault[]) {
  const cells = splitRow(line);
  if (cells.length > columns.length) {
    const names = columns.map((column) => column.label.toLowerCase()).join('; ');
    faults.push({ field: name, detail: `line ${row + 1} has ${cells.length} entries; write ${names}` });
  }
  const item: Record<string, unknown> = {};
  columns.forEach((column, index) => {
    const cell = cells[index] ?? '';
    if (cell !== '' && cell !== '-') item[column.name] = entryFrom(cell, column.entry, column.name, faults);
  });
  return item;
}

function entryFrom(text: string, entry: Entry, name: string, faults: FormFault[]): unknown {
  switch (entry.as) {
    case 'quantity':
      return quantityFrom(text, entry, name, faults);
    case 'quantities':
      return splitList(text).map((each) => quantityFrom(each, entry, name, faults));
    case 'number':
      return numberFrom(text);
    case 'numbers':
      return splitList(text).map(numberFrom);
    case 'truth':
      return truthFrom(text);
    case 'json':
      return jsonFrom(text);
    case 'lines':
      return linesOf(text).map((line, row) => rowFrom(line, row, name, entry.columns, faults));
    case 'grid':
      return linesOf(text).map((line) => entryFrom(splitRow(line).join('\n'), entry.cell, name, faults));
    default:
      return text;
  }
}

function groupFrom(group: Group, fields: Fields, faults: FormFault[]): unknown {
  const body: Record<string, unknown> = {};
  for (const part of group.parts) {
    const value = valueFrom(part, fields, faults);
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

function valueFrom(control: Control, fields: Fields, faults: FormFault[]): unknown {
  switch (control.kind) {
    case 'group':
      return groupFrom(control, fields, faults);
    case 'repeat': {
      const rows = rowsTyped(control.name, fields);
      return rows.length === 0 ? undefined : rows.map((row) => groupFrom(control.item(row), fields, faults));
    }
    default: {
      const text = fields[control.name] ?? '';
      return text.trim() === '' ? undefined : entryFrom(text, control.entry, control.name, faults);
    }
  }
}

/** The JSON body that a form's typed texts stand for: the page then computes by the same call as a program. */
export function bodyOf(controls: readonly Control[], fields: Fields): Built {
  const faults: FormFault[] = [];
  const whole: Group = { kind: 'group', name: '', label: '', about: '', optional: false, parts: controls };
  return { body: groupFrom(whole, fields, faults), faults };
}
