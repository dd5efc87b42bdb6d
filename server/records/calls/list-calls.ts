import { sql } from 'kysely';
import { type Principal, requireDesk } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { type Call, toCall } from './calls.ts';
import { mayBeStopped } from './stop-signs.ts';

export interface ListedCall extends Call {
  readonly buildLabel: string;
  /** Grows with every change of the build. */
  readonly buildVersion: number;
  /** Something is on record of the build that could stop it; whether it does, its assessment says. */
  readonly mayBeStopped: boolean;
  /** Who entered the newest line of its build, and when; left out where nothing was entered. */
  readonly lastChange?: { readonly by: string; readonly at: Date };
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
    .leftJoin('event', (join) =>
      join
        .onRef('event.shop_id', '=', 'build.shop_id')
        .onRef('event.build_id', '=', 'build.id')
        .onRef('event.seq', '=', 'build.last_seq'),
    )
    .selectAll('call')
    .select(['event.by_name as last_by', 'event.created_at as last_at'])
    .select(['build.label as build_label', 'build.last_seq as build_version'])
    .select(mayBeStopped(principal, sql.ref<string>('call.build_id')).as('may_be_stopped'))
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
  return rows.map((row) => ({
    ...toCall(row),
    buildLabel: row.build_label,
    buildVersion: row.build_version,
    mayBeStopped: row.may_be_stopped,
    ...(row.last_by === null || row.last_at === null
      ? {}
      : { lastChange: { by: row.last_by, at: row.last_at } }),
  }));
}
