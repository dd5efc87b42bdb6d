import type { ColumnType, Generated } from 'kysely';
import type { Corrected, Fixed, Sequence } from './columns.ts';

/** Marks on stem ends, and what makes a lash of the sheet a line of a log. */

export interface TipMarkTable extends Corrected {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  seq: Sequence;
  cylinder: Fixed<number>;
  valve: Fixed<string>;
  side: Fixed<string>;
  width_value: Fixed<number>;
  width_unit: Fixed<string>;
  width_typed: Fixed<string>;
  width_read_as: Fixed<string>;
  off_value: Fixed<number | null>;
  off_unit: Fixed<string | null>;
  off_typed: Fixed<string | null>;
  off_read_as: Fixed<string | null>;
  pushrod_value: Fixed<number | null>;
  pushrod_unit: Fixed<string | null>;
  pushrod_typed: Fixed<string | null>;
  pushrod_read_as: Fixed<string | null>;
  pushrod_over: Fixed<string>;
  shims_value: Fixed<number | null>;
  shims_unit: Fixed<string | null>;
  shims_typed: Fixed<string | null>;
  shims_read_as: Fixed<string | null>;
  stem_value: Fixed<number | null>;
  stem_unit: Fixed<string | null>;
  stem_typed: Fixed<string | null>;
  stem_read_as: Fixed<string | null>;
  spring: Fixed<string>;
  found: Fixed<string>;
  arm_id: Fixed<string | null>;
  read_as: Fixed<string>;
}

export interface LashLogTable {
  shop_id: Fixed<string>;
  reading_id: Fixed<string>;
  build_id: Fixed<string>;
  engine: Fixed<string>;
  moment: Fixed<string>;
  nut: Fixed<string>;
  /** A day without a time; it is read as text. */
  read_on: ColumnType<string | null, string | null, never>;
  done_by: Fixed<string>;
  shim_value: Fixed<number | null>;
  shim_unit: Fixed<string | null>;
  shim_typed: Fixed<string | null>;
  shim_read_as: Fixed<string | null>;
}
