import { z } from 'zod';
import { someWords } from '../../shared/schemas/texts.ts';
import type { Database, Tx } from '../database/database.ts';
import { hashPassword, verifyPassword } from './passwords.ts';
import { type Principal, requireStaff } from './principal.ts';
import { noteSecurityOf } from './security-events.ts';
import { endAllSessions } from './sessions.ts';
import type { SignInLimits } from './sign-in-limits.ts';

export const newPassword = z.strictObject({
  current: someWords('the current password', 1000),
  password: someWords('the new password', 1000),
});

/** A password that is to take the place of another. */
interface PasswordChange {
  /** What was looked at; if it is another by then, nothing is changed. */
  readonly stored: string;
  readonly hash: string;
}

/**
 * Looks at the current password and hashes the new one, before the transaction that keeps it; undefined where the current
 * one does not fit. It can't be guessed at faster than at the sign-in.
 */
export async function preparePassword(
  db: Database,
  limits: SignInLimits,
  principal: Principal,
  input: z.output<typeof newPassword>,
): Promise<PasswordChange | undefined> {
  const { shopId, id } = requireStaff(principal);
  await limits.takeCurrent(id);
  const { password_hash } = await db.shopTransaction(
    shopId,
    (tx) =>
      tx
        .selectFrom('staff')
        .select('password_hash')
        .where('shop_id', '=', shopId)
        .where('id', '=', id)
        .executeTakeFirstOrThrow(),
    'read',
  );
  const stored = password_hash ?? '';
  if (!(await verifyPassword(password_hash, input.current, 'known'))) {
    await db.shopTransaction(shopId, (tx) => noteSecurityOf(tx, principal, 'password-refused'));
    return undefined;
  }
  await limits.forgiveCurrent(id);
  return { stored, hash: await hashPassword(input.password) };
}

/** Changes one's own password; every other session of one's own ends. */
export async function changePassword(
  tx: Tx,
  principal: Principal,
  { stored, hash }: PasswordChange,
  now: Date,
): Promise<boolean> {
  const staff = requireStaff(principal);
  const row = await tx
    .updateTable('staff')
    .set({ password_hash: hash })
    .where('shop_id', '=', principal.shopId)
    .where('id', '=', staff.id)
    .where('password_hash', '=', stored)
    .returning('id')
    .executeTakeFirst();
  if (row === undefined) return false;
  await noteSecurityOf(tx, principal, 'password-changed');
  await endAllSessions(tx, principal.shopId, staff.id, now, staff.sessionId);
  return true;
}
