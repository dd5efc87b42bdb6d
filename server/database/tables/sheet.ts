import type { Generated } from 'kysely';
import type { Author, Corrected, Fixed, Sequence } from './columns.ts';

/** The per-valve sheet and the limits it is judged by. */

export interface ValveReadingTable extends Corrected {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  seq: Sequence;
  place: Fixed<number>;
  cylinder: Fixed<number>;
  valve: Fixed<string>;
  kind: Fixed<string>;
  value: Fixed<number | null>;
  low: Fixed<number | null>;
  high: Fixed<number | null>;
  unit: Fixed<string>;
  typed: Fixed<string>;
  read_as: Fixed<string>;
  tool: Fixed<string>;
  spring: Fixed<string>;
  lifter: Fixed<string>;
  arms: Fixed<string>;
  arm_id: Fixed<string | null>;
}

export interface ShopLimitTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  name: Fixed<string>;
  revision: Fixed<number>;
  value: Fixed<number>;
  unit: Fixed<string>;
  typed: Fixed<string>;
  read_as: Fixed<string>;
  source: Fixed<string>;
}
