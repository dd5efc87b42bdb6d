import { z } from 'zod';
import { unitsOf } from '../../shared/quantities/units.ts';
import { outputDimension, outputEvent } from '../../shared/schemas/field-info.ts';
import type { TableData } from '../../views/parts/table.examples.ts';
import type { Registered } from '../compute/registry.ts';
import type { Control, Entry } from '../compute-forms/form/control.ts';
import { controlsOf } from '../compute-forms/form/controls-of.ts';
import { aboutOf, bareSchema, isOptional } from '../compute-forms/form/words.ts';

interface Row {
  readonly name: string;
  readonly about: string;
  readonly kind: string;
  readonly optional: boolean;
}

function kindOfEntry(entry: Entry): string {
  switch (entry.as) {
    case 'quantity':
      return unitsOf(entry.dimension).join(', ');
    case 'quantities':
      return `list; ${unitsOf(entry.dimension).join(', ')}`;
    case 'event':
      return `deg, ${entry.sides.join(' ')}`;
    case 'word':
      return entry.words.join(', ');
    case 'truth':
      return 'true, false';
    case 'number':
      return 'number';
    case 'numbers':
      return 'list of numbers';
    case 'grid':
      return `list of lists; ${kindOfEntry(entry.cell).replace(/^list;? ?(of )?/, '')}`;
    case 'lines':
      return 'list of objects';
    case 'text':
      return 'text';
    default:
      return 'JSON';
  }
}

function inputRows(control: Control): Row[] {
  const { name, about, optional } = control;
  switch (control.kind) {
    case 'leaf': {
      const own = { name, about, optional, kind: kindOfEntry(control.entry) };
      if (control.entry.as !== 'lines') return [own];
      return [
        own,
        ...control.entry.columns.flatMap((column) =>
          inputRows({ ...column, name: `${name}[].${column.name}` }),
        ),
      ];
    }
    case 'group':
      return [{ name, about, optional, kind: 'object' }, ...control.parts.flatMap(inputRows)];
    default: {
      const items = control.item(0).parts.flatMap(inputRows);
      const named = items.map((row) => ({ ...row, name: row.name.replace(`${name}.0`, `${name}[]`) }));
      return [{ name, about, optional, kind: 'list of objects' }, ...named];
    }
  }
}

type Schema = z.core.$ZodType;

function kindOfOutput(schema: Schema): string {
  if (schema instanceof z.ZodNumber) {
    const event = outputEvent.get(schema);
    if (event !== undefined) return `deg ${event.side}`;
    const known = outputDimension.get(schema);
    return known === undefined ? 'number' : unitsOf(known.dimension).join(', ');
  }
  if (schema instanceof z.ZodEnum) return schema.options.map(String).join(', ');
  if (schema instanceof z.ZodArray) {
    const item = bareSchema(schema.element);
    return item instanceof z.ZodObject ? 'list of objects' : `list; ${kindOfOutput(item)}`;
  }
  if (schema instanceof z.ZodTuple) return `${schema.def.items.length} values`;
  if (schema instanceof z.ZodObject) return 'object';
  return schema instanceof z.ZodBoolean ? 'true, false' : 'text';
}

function outputRows(schema: Schema, prefix = ''): Row[] {
  const bare = bareSchema(schema);
  if (bare instanceof z.ZodArray) return outputRows(bare.element, `${prefix}[]`);
  if (!(bare instanceof z.ZodObject)) return [];
  return Object.entries(bare.shape).flatMap(([key, field]) => {
    const name = prefix === '' ? key : `${prefix}.${key}`;
    const inner = bareSchema(field);
    const row = { name, about: aboutOf(field), kind: kindOfOutput(inner), optional: isOptional(field) };
    return [row, ...outputRows(inner, name)];
  });
}

function tableOf(caption: string, rows: readonly Row[], left: string): TableData {
  return {
    caption,
    columns: [{ label: 'Name' }, { label: 'What it is' }, { label: 'Unit or words' }],
    rows: rows.map(({ name, about, kind, optional }) => ({
      cells: [name, { text: about, ...(optional ? { why: left } : {}) }, kind],
    })),
    empty: 'None.',
  };
}

/** Every entry that goes in, and every value that comes out, by its name in JSON. */
export function entryTables(each: Registered): readonly TableData[] {
  return [
    tableOf('What goes in', controlsOf(each.input).flatMap(inputRows), 'may be left out'),
    tableOf('What comes out', outputRows(each.output), 'left out where it does not apply'),
  ];
}
