import type { Generated, JSONColumnType } from 'kysely';
import type { Corrected, Fixed, Sequence } from './columns.ts';

/** Piston to valve over the crank, a whole scan in a row. */
export interface GapScanTable extends Corrected {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  seq: Sequence;
  cylinder: Fixed<number>;
  valve: Fixed<string>;
  readings: JSONColumnType<object, string, never>;
  read_as: Fixed<string>;
  tool: Fixed<string>;
  spring: Fixed<string>;
  lifter: Fixed<string>;
  lash: Fixed<string>;
  lash_setting_value: Fixed<number | null>;
  lash_setting_unit: Fixed<string | null>;
  lash_setting_typed: Fixed<string | null>;
  lash_setting_read_as: Fixed<string | null>;
  arms: Fixed<string>;
  arm_id: Fixed<string | null>;
}
