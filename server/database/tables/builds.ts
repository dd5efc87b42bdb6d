import type { ColumnType, Generated, JSONColumnType } from 'kysely';
import type { UnitSystem } from '../../../shared/quantities/units.ts';
import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';
import type { Author, Created, Fixed, Sequence, WithDefault } from './columns.ts';

/** Builds with their revisions, and the arms on their valves. */

export interface BuildTable {
  shop_id: Fixed<string>;
  id: Generated<string>;
  label: string;
  revision: WithDefault<number>;
  last_seq: ColumnType<number, number | undefined, number>;
  units: ColumnType<UnitSystem, UnitSystem | undefined, UnitSystem>;
  created_at: Created;
}

export interface BuildRevisionTable extends Author {
  shop_id: Fixed<string>;
  build_id: Fixed<string>;
  revision: Fixed<number>;
  spec: JSONColumnType<BuildSpec, string, never>;
  reason: Fixed<string>;
}

export interface ArmTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  name: Fixed<string>;
  family: Fixed<string>;
  ratio_stamp: Fixed<string>;
  other_number: Fixed<string>;
  box_label: Fixed<string>;
}

/** Its marks as they were read again; the newest count. */
export interface ArmMarkedTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  arm_id: Fixed<string>;
  ratio_stamp: Fixed<string>;
  other_number: Fixed<string>;
  box_label: Fixed<string>;
  reason: Fixed<string>;
  seq: Sequence;
}

export interface ArmPlacementTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  arm_id: Fixed<string>;
  cylinder: Fixed<number>;
  valve: Fixed<string>;
  reason: Fixed<string>;
  seq: Sequence;
}
