import { z } from 'zod';
import { memberOf } from '../../../shared/member.ts';
import { outputPlace } from '../../../shared/schemas/field-info.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import { aboutOf, bareSchema, labelOf } from '../form/words.ts';
import { shownValue } from './value-text.ts';

type Schema = z.core.$ZodType;

/** One value of an answer with its words. */
export interface Scalar {
  readonly name: string;
  readonly label: string;
  readonly about: string;
  readonly value: unknown;
}

interface AnswerParts {
  readonly scalars: readonly Scalar[];
  readonly tables: readonly TableData[];
}

/** A place in a list is counted from 0 in an answer, and from 1 where people read it, as the rows of a table are. */
const counted = (schema: Schema, value: unknown): unknown =>
  outputPlace.has(bareSchema(schema)) && typeof value === 'number' ? value + 1 : value;

const saidOf = (schema: Schema): string => {
  const place = outputPlace.get(bareSchema(schema));
  return place === undefined ? aboutOf(schema) : `${place.what}, counted from 1`;
};

interface Column {
  readonly label: string;
  readonly path: readonly string[];
  readonly schema: Schema;
}

const at = (row: unknown, { path, schema }: Column): unknown =>
  counted(schema, path.reduce<unknown>(memberOf, row));

/** Whether a column of such values stands digits under digits. */
const isFigure = (value: unknown): boolean =>
  value === undefined || typeof value === 'number' || typeof memberOf(value, 'value') === 'number';

/** The columns of a list's items: an object's entries, those of objects inside it too. */
function columnsOf(item: Schema, label = '', path: readonly string[] = []): Column[] {
  const bare = bareSchema(item);
  if (!(bare instanceof z.ZodObject)) return [{ label: label === '' ? 'Value' : label, path, schema: item }];
  return Object.entries(bare.shape).flatMap(([key, field]) =>
    columnsOf(field, label === '' ? labelOf(key) : `${label}, ${labelOf(key).toLowerCase()}`, [...path, key]),
  );
}

/** Two in a row are the ends of an interval. */
const ENDS = ['From', 'To'] as const;

function tableOf(caption: string, about: string, item: Schema, rows: readonly unknown[]): TableData {
  const inner = bareSchema(item);
  const width = Math.max(1, ...rows.map((row) => (Array.isArray(row) ? row.length : 1)));
  const columns =
    inner instanceof z.ZodArray || inner instanceof z.ZodTuple
      ? Array.from({ length: width }, (_, index) => ({
          label: width === 2 ? (ENDS[index] ?? '') : `Value ${index + 1}`,
          path: [String(index)],
          schema: inner instanceof z.ZodArray ? inner.element : inner,
        }))
      : columnsOf(inner);
  const wanted = columns.filter(
    (column) => rows.length === 0 || rows.some((row) => at(row, column) !== undefined),
  );
  return {
    caption,
    columns: [
      { label: 'No.' },
      ...wanted.map((column) => ({
        label: column.label,
        number: rows.every((row) => isFigure(at(row, column))),
      })),
    ],
    rows: rows.map((row, index) => ({
      cells: [String(index + 1), ...wanted.map((column) => shownValue(at(row, column)))],
    })),
    ...(about === '' ? {} : { note: `${about.charAt(0).toUpperCase()}${about.slice(1)}.` }),
    empty: 'None.',
  };
}

/** Takes an answer apart into single values and tables, by the schema of the computation's output. */
export function answerParts(output: Schema, result: unknown, above = '', prefix = ''): AnswerParts {
  const scalars: Scalar[] = [];
  const tables: TableData[] = [];
  const bare = bareSchema(output);
  if (!(bare instanceof z.ZodObject)) return { scalars, tables };
  for (const [key, field] of Object.entries(bare.shape)) {
    const value = memberOf(result, key);
    if (value === undefined) continue;
    const label = above === '' ? labelOf(key) : `${above}, ${labelOf(key).toLowerCase()}`;
    const inner = bareSchema(field);
    if (inner instanceof z.ZodArray && Array.isArray(value)) {
      tables.push(tableOf(label, aboutOf(field), inner.element, value));
    } else if (inner instanceof z.ZodObject) {
      const within = answerParts(inner, value, label, `${prefix}${key}.`);
      scalars.push(...within.scalars);
      tables.push(...within.tables);
    } else {
      scalars.push({ name: `${prefix}${key}`, label, about: saidOf(field), value: counted(field, value) });
    }
  }
  return { scalars, tables };
}
