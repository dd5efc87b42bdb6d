import { sql } from 'kysely';
import type { Principal } from '../../auth/principal.ts';

/** Why nothing more is read in a set-up, or said of it. */
export const STRUCK = 'this set-up has been struck out; start a new one';

/** Whether the set-up of a query has been struck out, as a condition beside what else is asked. */
export const isStruck = ({ shopId }: Principal) =>
  sql<boolean>`exists (select 1 from set_up_statement as later where later.shop_id = ${shopId}
    and later.set_up_id = set_up.id and later.said ->> 'struck' = 'true')`;
