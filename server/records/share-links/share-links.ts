import type { Selectable } from 'kysely';
import type { z } from 'zod';
import type { shareBuild } from '../../../shared/schemas/commands.ts';
import { type Principal, requireStaff } from '../../auth/principal.ts';
import { newSecret } from '../../auth/secrets.ts';
import { noteSecurityOf } from '../../auth/security-events.ts';
import type { Tx } from '../../database/database.ts';
import type { ShareLinkTable } from '../../database/tables/calls.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import { changeBuild } from '../../events/change-build.ts';
import { rowsOfBuild } from '../../events/rows-of-build.ts';
import { notFound } from '../../problems/failure.ts';
import { getCall } from '../calls/calls.ts';
import { SHARE_LINK_EVENTS } from './events.ts';

/** A link that lets its holder see and enter readings of one build. The secret itself is shown once. */
export interface ShareLink {
  readonly id: string;
  readonly holder: string;
  readonly callId: string;
  readonly createdAt: Date;
  readonly expiresAt: Date;
  readonly revokedAt: Date | undefined;
}

const DAY = 86_400_000;

export async function shareCall(
  tx: Tx,
  principal: Principal,
  callId: string,
  input: z.output<typeof shareBuild>,
  now: Date,
): Promise<{ link: ShareLink; secret: string }> {
  const staff = requireStaff(principal);
  const call = await getCall(tx, principal, callId);
  return changeBuild(tx, principal, call.buildId, async ({ emit }) => {
    const { secret, hash } = newSecret('link');
    const row = await tx
      .insertInto('share_link')
      .values(
        everyColumn<ShareLinkTable>({
          shop_id: principal.shopId,
          build_id: call.buildId,
          call_id: callId,
          token_hash: hash,
          holder: input.holder,
          created_by: staff.id,
          expires_at: new Date(now.getTime() + input.days * DAY),
        }),
      )
      .returning(['id', 'created_at', 'expires_at'])
      .executeTakeFirstOrThrow();
    await noteSecurityOf(tx, principal, 'link-made', input.holder);
    await emit(SHARE_LINK_EVENTS['link-made'], {
      linkId: row.id,
      holder: input.holder,
      expiresAt: row.expires_at.toISOString(),
    });
    const link = {
      id: row.id,
      holder: input.holder,
      callId,
      createdAt: row.created_at,
      expiresAt: row.expires_at,
      revokedAt: undefined,
    };
    return { link, secret };
  });
}

/** Without what a link is opened by. */
const COLUMNS = ['id', 'holder', 'call_id', 'created_at', 'expires_at', 'revoked_at'] as const;

export const selectShareLinks = (tx: Tx) => tx.selectFrom('share_link').select(COLUMNS).orderBy('created_at');

export const toShareLink = (row: Pick<Selectable<ShareLinkTable>, (typeof COLUMNS)[number]>): ShareLink => ({
  id: row.id,
  holder: row.holder,
  callId: row.call_id,
  createdAt: row.created_at,
  expiresAt: row.expires_at,
  revokedAt: row.revoked_at ?? undefined,
});

export async function listShareLinks(tx: Tx, principal: Principal, buildId: string): Promise<ShareLink[]> {
  requireStaff(principal);
  return (await rowsOfBuild(tx, principal, buildId, selectShareLinks(tx))).map(toShareLink);
}

/** Ends a link and every session opened with it. */
export async function revokeShareLink(
  tx: Tx,
  principal: Principal,
  callId: string,
  linkId: string,
  now: Date,
): Promise<void> {
  requireStaff(principal);
  const call = await getCall(tx, principal, callId);
  await changeBuild(tx, principal, call.buildId, async ({ emit }) => {
    const row = await tx
      .updateTable('share_link')
      .set({ revoked_at: now })
      .where('shop_id', '=', principal.shopId)
      .where('build_id', '=', call.buildId)
      .where('id', '=', linkId)
      .where('revoked_at', 'is', null)
      .returning('holder')
      .executeTakeFirst();
    if (row === undefined) throw notFound('open link');
    await tx
      .deleteFrom('builder_session')
      .where('shop_id', '=', principal.shopId)
      .where('share_link_id', '=', linkId)
      .execute();
    await noteSecurityOf(tx, principal, 'link-ended', row.holder);
    await emit(SHARE_LINK_EVENTS['link-revoked'], { linkId, holder: row.holder });
  });
}
