import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import { someWords } from '../../shared/schemas/texts.ts';
import type { Tx } from '../database/database.ts';
import { Failure, notFound } from '../problems/failure.ts';
import { hashPassword, verifyPassword } from './passwords.ts';
import { personRow } from './person-row.ts';
import { type Principal, ROLES, requireAdministrator, requireStaff } from './principal.ts';
import { isId } from './secrets.ts';

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

export async function addStaff(
  tx: Tx,
  principal: Principal,
  input: z.output<typeof newStaff>,
): Promise<StaffMember> {
  requireAdministrator(principal);
  const roles = [...ROLES_OF[input.role]];
  const email = input.email.trim();
  const passwordHash = await hashPassword(input.password);
  const row = await tx
    .insertInto('staff')
    .values(personRow(principal.shopId, { name: input.name, email, passwordHash, roles }))
    .onConflict((conflict) => conflict.columns(['shop_id', 'email_key']).doNothing())
    .returning('id')
    .executeTakeFirst();
  if (row === undefined)
    throw new Failure('conflict', 'somebody with this e-mail address is at the desk already');
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
    .returning('id')
    .executeTakeFirst();
  if (row === undefined) throw notFound('person at the desk');
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

/** Changes one's own password; every other session of one's own ends. */
export async function changePassword(
  tx: Tx,
  principal: Principal,
  input: z.output<typeof newPassword>,
  now: Date,
): Promise<boolean> {
  const staff = requireStaff(principal);
  const row = await tx
    .selectFrom('staff')
    .select('password_hash')
    .where('shop_id', '=', principal.shopId)
    .where('id', '=', staff.id)
    .executeTakeFirstOrThrow();
  if (!(await verifyPassword(row.password_hash, input.current))) return false;
  await tx
    .updateTable('staff')
    .set({ password_hash: await hashPassword(input.password) })
    .where('shop_id', '=', principal.shopId)
    .where('id', '=', staff.id)
    .execute();
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
