import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { StopReason } from '../../mechanics/assessment/assessment.ts';
import { Failure } from '../../problems/failure.ts';
import { standingStops } from './standing.ts';

/** Said in full wherever a builder would take away what a stop rests on. */
export const STRUCK_BY_THE_DESK =
  'A reading that a stop rests on is struck out by the desk, and so is whatever else would take the stop away. Tell the desk what was read wrong.';

/** It stands as it did: by the same name, on all that it rested on. */
const standsIn = (after: readonly StopReason[], { id, restsOn }: StopReason): boolean =>
  after.some((each) => each.id === id && restsOn.every((entry) => each.restsOn.includes(entry)));

/**
 * Runs a command of a builder, who has a link and no account, and lets it take no stop away: not by striking out or
 * replacing the reading that it rests on, nor by anything else that is said of the build. What the builder did is then
 * undone with its transaction. The build is locked before, so that the stops before and after are told of one command.
 */
export async function keepStops<T>(tx: Tx, principal: Principal, work: () => Promise<T>): Promise<T> {
  if (principal.kind !== 'builder') return work();
  const { buildId, shopId } = principal;
  const mine = tx.selectFrom('build').select('id').where('shop_id', '=', shopId).where('id', '=', buildId);
  await mine.forUpdate().execute();
  const before = await standingStops(tx, principal, buildId);
  const done = await work();
  if (before.length === 0) return done;
  const after = await standingStops(tx, principal, buildId);
  const gone = before.find((stop) => !standsIn(after, stop));
  if (gone !== undefined) throw new Failure('stop-rests-on-it', `${gone.sentence} ${STRUCK_BY_THE_DESK}`);
  return done;
}
