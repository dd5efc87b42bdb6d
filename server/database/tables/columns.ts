import type { ColumnType } from 'kysely';

/** Column types, declared once; the migrations are the other half of every table. */
export type Created = ColumnType<Date, never, never>;
export type Fixed<T> = ColumnType<T, T, never>;
export type WithDefault<T> = ColumnType<T, T | undefined, T>;
export type Moment = ColumnType<Date, Date, Date>;
export type MaybeMoment = ColumnType<Date | null, Date | null | undefined, Date | null>;
/** bigint comes as text; sequence numbers stay far below 2^53, so the pool reads them as numbers. */
export type Sequence = ColumnType<number, number, number>;

/** Who wrote the row, and when. */
export interface Author {
  by_kind: Fixed<string>;
  by_id: Fixed<string>;
  by_name: Fixed<string>;
  created_at: Created;
}

/** An entry that a later one can take the place of; `server/records/corrections/` says how. */
export interface Corrected extends Author {
  replaces: Fixed<string | null>;
  struck: ColumnType<boolean, boolean | undefined, never>;
  reason: ColumnType<string, string | undefined, never>;
}
