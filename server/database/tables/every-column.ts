import type { InsertType } from 'kysely';

/** Columns that the server fills in where they are left out. */
type Filled<Column> = [InsertType<Column>] extends [never]
  ? true
  : undefined extends InsertType<Column>
    ? true
    : false;

/**
 * A new row with every column that nobody fills in for it. One that may be null is written as null: left out it would
 * be null in silence.
 */
type EveryColumn<Table> = {
  readonly [K in keyof Table as Filled<Table[K]> extends true ? never : K]: InsertType<Table[K]>;
} & {
  readonly [K in keyof Table as [InsertType<Table[K]>] extends [never]
    ? never
    : Filled<Table[K]> extends true
      ? K
      : never]?: InsertType<Table[K]>;
};

export const everyColumn = <Table>(columns: EveryColumn<Table>): EveryColumn<Table> => columns;
