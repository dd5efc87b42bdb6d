import type { ColumnType, Generated, JSONColumnType } from 'kysely';
import type { Author, Corrected, Created, Fixed, MaybeMoment, Sequence } from './columns.ts';

/** What else stands on the record of a build, and answers kept to be given twice. */

export interface EventTable extends Author {
  shop_id: Fixed<string>;
  build_id: Fixed<string>;
  seq: Sequence;
  kind: Fixed<string>;
  data: JSONColumnType<object, string, never>;
  typed_at: Fixed<Date | null>;
  before_stop: Fixed<boolean>;
}

export interface NoteTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  call_id: Fixed<string>;
  kind: Fixed<string>;
  body: Fixed<string>;
  rests_on: Fixed<string>;
  owner: Fixed<string>;
  due: ColumnType<string | null, string | null | undefined, never>;
  done_at: MaybeMoment;
  seq: Sequence;
}

export interface PhotographTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  reading_id: Fixed<string | null>;
  arm_id: Fixed<string | null>;
  shows: Fixed<string>;
  caption: Fixed<string>;
  width: Fixed<number>;
  height: Fixed<number>;
  jpeg: Fixed<Buffer>;
  seq: Sequence;
}

export interface WorkingTable extends Corrected {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  computation: Fixed<string>;
  inputs: JSONColumnType<object, string, never>;
  answer: JSONColumnType<object, string, never>;
  revision: Fixed<number>;
  seq: Sequence;
}

export interface IdempotencyTable {
  shop_id: Fixed<string>;
  caller: Fixed<string>;
  method: Fixed<string>;
  path: Fixed<string>;
  key: Fixed<string>;
  request_hash: Fixed<string>;
  status: Fixed<number>;
  body: JSONColumnType<object, string, never>;
  location: Fixed<string | null>;
  etag: Fixed<string | null>;
  created_at: Created;
}
