import { type Principal, requireDesk } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { ListedCall } from './list-calls.ts';

interface Counts {
  readonly readings: ReadonlySet<string>;
  readonly setUps: ReadonlySet<string>;
  readonly promises: ReadonlyMap<string, number>;
}

async function countsOf(tx: Tx, principal: Principal, buildIds: readonly string[]): Promise<Counts> {
  const readings = await tx
    .selectFrom('reading')
    .select('build_id')
    .distinct()
    .where('shop_id', '=', principal.shopId)
    .where('build_id', 'in', buildIds)
    .where('struck', '=', false)
    .execute();
  const setUps = await tx
    .selectFrom('set_up')
    .select('build_id')
    .distinct()
    .where('shop_id', '=', principal.shopId)
    .where('build_id', 'in', buildIds)
    .execute();
  const promises = await tx
    .selectFrom('note')
    .select(({ fn }) => ['call_id', fn.countAll<number>().as('open')])
    .where('shop_id', '=', principal.shopId)
    .where('build_id', 'in', buildIds)
    .where('kind', '=', 'promise')
    .where('done_at', 'is', null)
    .groupBy('call_id')
    .execute();
  return {
    readings: new Set(readings.map((row) => row.build_id)),
    setUps: new Set(setUps.map((row) => row.build_id)),
    promises: new Map(promises.map((row) => [row.call_id, Number(row.open)])),
  };
}

function waitsFor(call: ListedCall, counts: Counts): string {
  if (call.held) return `the hold: ${call.holdReason}`;
  const open = counts.promises.get(call.id) ?? 0;
  const promised = open === 0 ? '' : `${open} open ${open === 1 ? 'promise' : 'promises'}`;
  if (call.closedAt !== undefined) return promised === '' ? 'nothing, it is closed' : `closed; ${promised}`;
  if (call.engineState === 'not-asked' || call.contact === 'not-asked') return 'the first question';
  if (promised !== '') return promised;
  if (counts.readings.has(call.buildId)) return 'what is found to be said';
  return counts.setUps.has(call.buildId) ? 'the first pass' : 'a set-up and the first pass';
}

/** What each listed call waits for, in words, in three queries however many calls there are. */
export async function waitingFor(
  tx: Tx,
  principal: Principal,
  calls: readonly ListedCall[],
): Promise<ReadonlyMap<string, string>> {
  requireDesk(principal, 'read');
  if (calls.length === 0) return new Map();
  const counts = await countsOf(tx, principal, [...new Set(calls.map((call) => call.buildId))]);
  return new Map(calls.map((call) => [call.id, waitsFor(call, counts)]));
}
