import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import { someWords } from '../../shared/schemas/texts.ts';
import type { Database, Tx } from '../database/database.ts';
import { Failure, notFound } from '../problems/failure.ts';
import { hashPassword, verifyPassword } from './passwords.ts';
import { personRow } from './person-row.ts';
import { type Principal, ROLES, requireAdministrator, requireStaff } from './principal.ts';
import { isId } from './secrets.ts';
import { noteSecurityOf } from './security-events.ts';
import type { SignInLimits } from './sign-in-limits.ts';

export const newStaff = z.strictObject({
  name: someWords('their name'),
  email: someWords('e-mail address', 320),
  role: z.enum(['desk', 'quality', 'administrator']).meta({ description: 'what they do' }),
  password: someWords('a first password, to be changed', 1000),
});

export const newPassword = z.strictObject({
  current: someWords('the current password', 1000),
  password: someWords('the new password', 1000),
});

export const staffView = z
  .object({
    id: z.uuid(),
    name: z.string(),
    email: z.string(),
    roles: z.array(z.string()),
    disabledAt: z.iso.datetime().optional(),
  })
  .meta({ id: 'Staff' });
export type StaffMember = z.output<typeof staffView>;

export const showStaff = (person: StaffMember) =>
  answer(staffView, {
    id: person.id,
    name: person.name,
    email: person.email,
    roles: person.roles,
    disabledAt: person.disabledAt,
  });

/** An administrator does what the desk does; the other roles stand for themselves. */
const ROLES_OF = { desk: ['desk'], quality: ['quality'], administrator: [...ROLES] } as const;

export async function listStaff(tx: Tx, principal: Principal): Promise<StaffMember[]> {
  requireAdministrator(principal);
  const rows = await tx
    .selectFrom('staff')
    .selectAll()
    .where('shop_id', '=', principal.shopId)
    .orderBy('created_at')
    .orderBy('id')
    .execute();
  return rows.map((row) => ({
    id: row.id,
    name: row.name,
    email: row.email,
    roles: row.roles,
    disabledAt: row.disabled_at?.toISOString(),
  }));
}

/** The hash of a first password: for an administrator, and before the transaction that keeps it. */
export async function firstPasswordHash(principal: Principal, password: string): Promise<string> {
  requireAdministrator(principal);
  return hashPassword(password);
}

export async function addStaff(
  tx: Tx,
  principal: Principal,
  input: Omit<z.output<typeof newStaff>, 'password'>,
  passwordHash: string,
): Promise<StaffMember> {
  requireAdministrator(principal);
  const roles = [...ROLES_OF[input.role]];
  const email = input.email.trim();
  const row = await tx
    .insertInto('staff')
    .values(personRow(principal.shopId, { name: input.name, email, passwordHash, roles }))
    .onConflict((conflict) => conflict.columns(['shop_id', 'email_key']).doNothing())
    .returning('id')
    .executeTakeFirst();
  if (row === undefined)
    throw new Failure('conflict', 'somebody with this e-mail address is at the desk already');
  await noteSecurityOf(tx, principal, 'person-added', input.name);
  return { id: row.id, name: input.name, email, roles };
}

/** Takes a person off the desk, and ends their sessions; nobody can take themselves off. */
export async function disableStaff(tx: Tx, principal: Principal, staffId: string, now: Date): Promise<void> {
  const administrator = requireAdministrator(principal);
  if (!isId(staffId)) throw notFound('person at the desk');
  if (administrator.id === staffId) throw new Failure('conflict', 'you can’t take yourself off the desk');
  const row = await tx
    .updateTable('staff')
    .set({ disabled_at: now })
    .where('shop_id', '=', principal.shopId)
    .where('id', '=', staffId)
    .where('disabled_at', 'is', null)
    .returning('name')
    .executeTakeFirst();
  if (row === undefined) throw notFound('person at the desk');
  await noteSecurityOf(tx, principal, 'person-left', row.name);
  await endAllSessions(tx, principal.shopId, staffId, now, undefined);
}

async function endAllSessions(
  tx: Tx,
  shopId: string,
  staffId: string,
  now: Date,
  but: string | undefined,
): Promise<void> {
  await tx
    .updateTable('staff_session')
    .set({ ended_at: now })
    .where('shop_id', '=', shopId)
    .where('staff_id', '=', staffId)
    .where('ended_at', 'is', null)
    .$if(but !== undefined, (query) => query.where('id', '!=', but ?? ''))
    .execute();
}

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
  const { password_hash: stored } = await db.shopTransaction(
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
  if (!(await verifyPassword(stored, input.current, 'known'))) {
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

/** Turns the single-key shortcuts of one's own pages on or off. */
export async function setShortcuts(tx: Tx, principal: Principal, on: boolean): Promise<void> {
  const staff = requireStaff(principal);
  await tx
    .updateTable('staff')
    .set({ shortcuts: on })
    .where('shop_id', '=', principal.shopId)
    .where('id', '=', staff.id)
    .execute();
}
