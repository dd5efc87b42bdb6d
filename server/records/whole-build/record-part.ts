import { z } from 'zod';
import type { Sent } from '../../../shared/schemas/answer.ts';
import type { Tx } from '../../database/database.ts';
import type { BuildQuery } from '../../events/rows-of-build.ts';

/** One list of a build's record: how its rows are read, what they are, and how the export shows them. */
export interface RecordPart<Row, Item, View extends z.ZodType = z.ZodType> {
  readonly view: View;
  readonly description: string;
  select(tx: Tx): BuildQuery<Row>;
  items(rows: readonly Row[]): Item[];
  show(item: Item, buildId: string): Sent<z.output<View>>;
}

type RecordParts = Readonly<Record<string, RecordPart<unknown, unknown>>>;

/** The items of each part under its name. */
export type ItemsOf<Parts extends RecordParts> = {
  readonly [Name in keyof Parts]: ReturnType<Parts[Name]['items']>;
};

type RowsOf<Parts extends RecordParts> = {
  readonly [Name in keyof Parts]: Parts[Name] extends RecordPart<infer Row, unknown> ? readonly Row[] : never;
};
type QueriesOf<Parts extends RecordParts> = {
  readonly [Name in keyof Parts]: ReturnType<Parts[Name]['select']>;
};
type ShapeOf<Parts extends RecordParts> = {
  readonly [Name in keyof Parts]: z.ZodArray<Parts[Name]['view']>;
};
type ShownOf<Parts extends RecordParts> = {
  readonly [Name in keyof Parts]: ReturnType<Parts[Name]['show']>[];
};

/** Narrows a query to one build. */
type Narrow = (query: BuildQuery<unknown>) => BuildQuery<unknown>;

type Each = (part: RecordPart<unknown, unknown>, name: string) => unknown;

const overParts = (parts: RecordParts, each: Each): Record<string, unknown> =>
  Object.fromEntries(Object.entries(parts).map(([name, part]) => [name, each(part, name)]));

/** The query of each part, narrowed to one build. */
export function queriesOf<Parts extends RecordParts>(parts: Parts, tx: Tx, ofBuild: Narrow): QueriesOf<Parts>;
export function queriesOf(parts: RecordParts, tx: Tx, ofBuild: Narrow): object {
  return overParts(parts, (part) => ofBuild(part.select(tx)));
}

/** What the rows of each part are. */
export function itemsOf<Parts extends RecordParts>(parts: Parts, rows: RowsOf<Parts>): ItemsOf<Parts>;
export function itemsOf(parts: RecordParts, rows: Readonly<Record<string, readonly unknown[]>>): object {
  return overParts(parts, (part, name) => part.items(rows[name] ?? []));
}

/** Each part as a field of a JSON answer. */
export function shapeOf<Parts extends RecordParts>(parts: Parts): ShapeOf<Parts>;
export function shapeOf(parts: RecordParts): object {
  return overParts(parts, ({ view, description }) => z.array(view).meta({ description }));
}

/** The items of each part as that answer has them. */
export function shownOf<Parts extends RecordParts>(
  parts: Parts,
  items: ItemsOf<Parts>,
  buildId: string,
): ShownOf<Parts>;
export function shownOf(
  parts: RecordParts,
  items: Readonly<Record<string, readonly unknown[]>>,
  buildId: string,
): object {
  return overParts(parts, (part, name) => (items[name] ?? []).map((item) => part.show(item, buildId)));
}
