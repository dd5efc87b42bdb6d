import type { ColumnType, Generated } from 'kysely';
import type { Author, Corrected, Created, Fixed, Sequence } from './columns.ts';

/** The catalogue, and what was read of a part in the hand. */

export interface PartFamilyTable {
  shop_id: Fixed<string>;
  id: Generated<string>;
  code: Fixed<string>;
  name: string;
  fits: string;
  mount: string;
  tip: string;
  rings: string;
  nominal_ratio: number | null;
  hole_in: number | null;
  width_across_trunnion_in: number | null;
  roller_diameter_in: number | null;
  body_width_in: number | null;
  pivot_to_tip_in: number | null;
  pivot_to_cup_in: number | null;
  weight: number;
  notes: string;
  by_kind: string;
  by_id: string;
  by_name: string;
  created_at: Created;
  changed_at: ColumnType<Date, never, Date>;
}

export interface PartReadingTable extends Corrected {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  seq: Sequence;
  kind: Fixed<string>;
  typed: Fixed<string>;
  value: Fixed<number | null>;
  unit: Fixed<string | null>;
  word: Fixed<string | null>;
  read_as: Fixed<string>;
  place: Fixed<string>;
  part_id: Fixed<string | null>;
  tool: Fixed<string>;
  within_typed: Fixed<string | null>;
  within_value: Fixed<number | null>;
  within_unit: Fixed<string | null>;
  within_read_as: Fixed<string | null>;
  thread_count: Fixed<number | null>;
}

/** What a part in the hand is called, and which arm of the build it is; the newest row of a part counts. */
export interface PartInHandTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  part_id: Fixed<string | null>;
  name: Fixed<string>;
  arm_id: Fixed<string | null>;
  seq: Sequence;
}
