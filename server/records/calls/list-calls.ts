import { sql } from 'kysely';
import { type Principal, requireDesk } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { type Call, toCall } from './calls.ts';

export interface ListedCall extends Call {
  readonly buildLabel: string;
}

/** The shop's calls, newest first; `search` looks in number, caller, build and goal. */
export async function listCalls(
  tx: Tx,
  principal: Principal,
  options: {
    readonly search?: string | undefined;
    readonly before?: number | undefined;
    readonly limit: number;
  },
): Promise<ListedCall[]> {
  requireDesk(principal, 'read');
  const pattern = `%${(options.search ?? '').replace(/[\\%_]/g, '\\$&')}%`;
  const rows = await tx
    .selectFrom('call')
    .innerJoin('build', (join) =>
      join.onRef('build.shop_id', '=', 'call.shop_id').onRef('build.id', '=', 'call.build_id'),
    )
    .selectAll('call')
    .select('build.label as build_label')
    .where('call.shop_id', '=', principal.shopId)
    .$if(options.before !== undefined, (query) => query.where('call.number', '<', options.before ?? 0))
    .$if(options.search !== undefined && options.search !== '', (query) =>
      query.where((either) =>
        either.or([
          either('call.caller_name', 'ilike', pattern),
          either('build.label', 'ilike', pattern),
          either('call.goal', 'ilike', pattern),
          either(sql`call.number::text`, '=', options.search ?? ''),
        ]),
      ),
    )
    .orderBy('call.number', 'desc')
    .limit(options.limit)
    .execute();
  return rows.map((row) => ({ ...toCall(row), buildLabel: row.build_label }));
}
