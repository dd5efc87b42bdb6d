import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import type { Tx } from '../database/database.ts';
import { notFound } from '../problems/failure.ts';
import { type Principal, requireStaff } from './principal.ts';
import { IDLE_MS } from './resolvers.ts';
import { hintRights } from './rights-hint.ts';
import { isId } from './secrets.ts';
import { noteSecurityOf } from './security-events.ts';

export const ownSessionView = z
  .object({
    id: z.uuid(),
    openedAt: z.iso.datetime(),
    usedAt: z.iso.datetime().meta({ description: 'to within a minute' }),
    expiresAt: z.iso.datetime(),
    own: z.boolean().meta({ description: 'the one that asks' }),
  })
  .meta({ id: 'OwnSession' });
export type OwnSession = z.output<typeof ownSessionView>;

export const showOwnSession = (session: OwnSession) =>
  answer(ownSessionView, {
    id: session.id,
    openedAt: session.openedAt,
    usedAt: session.usedAt,
    expiresAt: session.expiresAt,
    own: session.own,
  });

/** Where one is signed in, the one that was used last first. */
export async function listOwnSessions(tx: Tx, principal: Principal, now: Date): Promise<OwnSession[]> {
  const staff = requireStaff(principal);
  const rows = await tx
    .selectFrom('staff_session')
    .select(['id', 'created_at', 'seen_at', 'expires_at'])
    .where('shop_id', '=', principal.shopId)
    .where('staff_id', '=', staff.id)
    .where('ended_at', 'is', null)
    .where('expires_at', '>', now)
    .where('seen_at', '>', new Date(now.getTime() - IDLE_MS))
    .orderBy('seen_at', 'desc')
    .orderBy('id')
    .execute();
  return rows.map((row) => ({
    id: row.id,
    openedAt: row.created_at.toISOString(),
    usedAt: row.seen_at.toISOString(),
    expiresAt: row.expires_at.toISOString(),
    own: row.id === staff.sessionId,
  }));
}

/** Ends one session of one’s own. */
export async function endOwnSession(tx: Tx, principal: Principal, id: string, now: Date): Promise<void> {
  const staff = requireStaff(principal);
  if (!isId(id)) throw notFound('session');
  const ended = await tx
    .updateTable('staff_session')
    .set({ ended_at: now })
    .where('shop_id', '=', principal.shopId)
    .where('staff_id', '=', staff.id)
    .where('id', '=', id)
    .where('ended_at', 'is', null)
    .returning('id')
    .executeTakeFirst();
  if (ended === undefined) throw notFound('session');
  await noteSecurityOf(tx, principal, 'session-ended');
  await hintRights(tx, staff.id);
}

/** Ends every session of one’s own but the one that asks; answers how many. */
export async function endOtherSessions(tx: Tx, principal: Principal, now: Date): Promise<number> {
  const staff = requireStaff(principal);
  const ended = await endAllSessions(tx, principal.shopId, staff.id, now, staff.sessionId);
  if (ended > 0) await noteSecurityOf(tx, principal, 'session-ended');
  return ended;
}

/** Ends the sessions of a person, but one if that is said; answers how many. */
export async function endAllSessions(
  tx: Tx,
  shopId: string,
  staffId: string,
  now: Date,
  but?: string,
): Promise<number> {
  const rows = await tx
    .updateTable('staff_session')
    .set({ ended_at: now })
    .where('shop_id', '=', shopId)
    .where('staff_id', '=', staffId)
    .where('ended_at', 'is', null)
    .$if(but !== undefined, (query) => query.where('id', '!=', but ?? ''))
    .returning('id')
    .execute();
  await hintRights(tx, staffId);
  return rows.length;
}
