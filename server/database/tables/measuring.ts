import type { ColumnType, Generated, JSONColumnType } from 'kysely';
import type { Method, SetUpSaid } from '../../../shared/schemas/method.ts';
import type { Author, Corrected, Fixed, Sequence } from './columns.ts';

/** Set-ups, what was read on them, and what was answered of it. */

export interface SetUpTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  number: Fixed<number>;
  revision: Fixed<number>;
  cylinder: Fixed<number>;
  valve: Fixed<string>;
  arm_id: Fixed<string | null>;
  method: JSONColumnType<Method, string, never>;
}

/** What was learnt of a set-up later. */
export interface SetUpStatementTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  set_up_id: Fixed<string>;
  seq: Sequence;
  said: JSONColumnType<SetUpSaid, string, never>;
  reason: Fixed<string>;
}

export interface ReadingTable extends Corrected {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  set_up_id: Fixed<string>;
  seq: Sequence;
  kind: Fixed<string>;
  pass: Fixed<number>;
  typed: Fixed<string>;
  value: Fixed<number>;
  unit: Fixed<string>;
  read_as: Fixed<string>;
  zero_typed: Fixed<string | null>;
  zero_value: Fixed<number | null>;
  zero_unit: Fixed<string | null>;
  at_typed: Fixed<string | null>;
  at_value: Fixed<number | null>;
  at_unit: Fixed<string | null>;
  at_read_as: Fixed<string | null>;
  counted: ColumnType<boolean, boolean | undefined, never>;
}

export interface AnswerTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  set_up_id: Fixed<string | null>;
  question: Fixed<string>;
  answer: Fixed<string>;
  question_id: Fixed<string | null>;
  code: ColumnType<string, string | undefined, never>;
  found: Fixed<boolean | null>;
  value_typed: Fixed<string | null>;
  value_value: Fixed<number | null>;
  value_unit: Fixed<string | null>;
  value_read_as: Fixed<string | null>;
  cylinder: Fixed<number | null>;
  valve: Fixed<string | null>;
  seq: Sequence;
}
