import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import { someWords } from '../../shared/schemas/texts.ts';
import type { Tx } from '../database/database.ts';
import { Failure, notFound } from '../problems/failure.ts';
import { endKeysOf } from './api-keys.ts';
import { passwordLinkFor } from './password-links.ts';
import { hashPassword } from './passwords.ts';
import { personRow } from './person-row.ts';
import { type Principal, ROLES, type Role, requireAdministrator } from './principal.ts';
import { hintRights } from './rights-hint.ts';
import { isId } from './secrets.ts';
import { noteSecurityOf } from './security-events.ts';
import { endAllSessions } from './sessions.ts';

const role = z.enum(['desk', 'quality', 'administrator']).meta({ description: 'what they do' });

export const newStaff = z.strictObject({
  name: someWords('their name'),
  email: someWords('e-mail address', 320),
  role,
  password: someWords('a first password, to be changed', 1000)
    .optional()
    .meta({ description: 'left out, they set their own by the link that is answered' }),
});

export const newRole = z.strictObject({ role });

export const staffView = z
  .object({
    id: z.uuid(),
    name: z.string(),
    email: z.string(),
    roles: z.array(z.string()),
    invited: z.boolean().meta({ description: 'has set no password yet' }),
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
    invited: person.invited,
    disabledAt: person.disabledAt,
  });

/** An administrator does what the desk does; the other roles stand for themselves. */
const ROLES_OF: Readonly<Record<z.output<typeof role>, readonly Role[]>> = {
  desk: ['desk'],
  quality: ['quality'],
  administrator: [...ROLES],
};

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
    invited: row.password_hash === null,
    disabledAt: row.disabled_at?.toISOString(),
  }));
}

/** The hash of a first password: for an administrator, and before the transaction that keeps it. */
export async function firstPasswordHash(
  principal: Principal,
  password: string | undefined,
): Promise<string | undefined> {
  requireAdministrator(principal);
  return password === undefined ? undefined : hashPassword(password);
}

/** A person of the desk, with the secret by which they set their password where they have none. */
interface WithSecret {
  readonly person: StaffMember;
  readonly secret?: string;
}

export async function addStaff(
  tx: Tx,
  principal: Principal,
  input: Omit<z.output<typeof newStaff>, 'password'>,
  passwordHash: string | undefined,
  now: Date,
): Promise<WithSecret> {
  requireAdministrator(principal);
  const roles = [...ROLES_OF[input.role]];
  const email = input.email.trim();
  const own = passwordHash === undefined ? {} : { passwordHash };
  const row = await tx
    .insertInto('staff')
    .values(personRow(principal.shopId, { name: input.name, email, roles, ...own }))
    .onConflict((conflict) => conflict.columns(['shop_id', 'email_key']).doNothing())
    .returning('id')
    .executeTakeFirst();
  if (row === undefined)
    throw new Failure('conflict', 'somebody with this e-mail address is at the desk already');
  await noteSecurityOf(tx, principal, 'person-added', input.name);
  const person = { id: row.id, name: input.name, email, roles, invited: passwordHash === undefined };
  if (passwordHash !== undefined) return { person };
  const { secret } = await passwordLinkFor(tx, principal.shopId, row.id, 'invitation', now);
  return { person, secret };
}

/** The database keeps the last administrator, whoever asks at the same moment. */
const LAST_ADMINISTRATOR = 'BC001';

function lastAdministrator(error: unknown): never {
  if (error instanceof Error && 'code' in error && error.code === LAST_ADMINISTRATOR)
    throw new Failure('conflict', 'this is the last administrator; make somebody else one first');
  throw error;
}

/** Takes a person off the desk, and ends their sessions and keys; nobody can take themselves off. */
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
    .executeTakeFirst()
    .catch(lastAdministrator);
  if (row === undefined) throw notFound('person at the desk');
  await noteSecurityOf(tx, principal, 'person-left', row.name);
  await endAllSessions(tx, principal.shopId, staffId, now);
  await endKeysOf(tx, principal, staffId, now);
}

/** Gives a person another role at once; the keys of somebody who is no longer an administrator end. */
export async function changeRole(
  tx: Tx,
  principal: Principal,
  staffId: string,
  input: z.output<typeof newRole>,
  now: Date,
): Promise<StaffMember> {
  requireAdministrator(principal);
  if (!isId(staffId)) throw notFound('person at the desk');
  const roles = [...ROLES_OF[input.role]];
  const row = await tx
    .updateTable('staff')
    .set({ roles })
    .where('shop_id', '=', principal.shopId)
    .where('id', '=', staffId)
    .where('disabled_at', 'is', null)
    .returning(['name', 'email', 'password_hash'])
    .executeTakeFirst()
    .catch(lastAdministrator);
  if (row === undefined) throw notFound('person at the desk');
  await noteSecurityOf(tx, principal, 'role-changed', `${row.name}: ${input.role}`);
  await hintRights(tx, staffId);
  if (input.role !== 'administrator') await endKeysOf(tx, principal, staffId, now);
  return { id: staffId, name: row.name, email: row.email, roles, invited: row.password_hash === null };
}

/** Brings a person back who was taken off. What they knew then opens nothing: they set a password by the link. */
export async function bringBack(
  tx: Tx,
  principal: Principal,
  staffId: string,
  now: Date,
): Promise<Required<WithSecret>> {
  requireAdministrator(principal);
  if (!isId(staffId)) throw notFound('person who left');
  const row = await tx
    .updateTable('staff')
    .set({ disabled_at: null, password_hash: null })
    .where('shop_id', '=', principal.shopId)
    .where('id', '=', staffId)
    .where('disabled_at', 'is not', null)
    .returning(['name', 'email', 'roles'])
    .executeTakeFirst();
  if (row === undefined) throw notFound('person who left');
  await noteSecurityOf(tx, principal, 'person-back', row.name);
  const { secret } = await passwordLinkFor(tx, principal.shopId, staffId, 'invitation', now);
  return {
    person: { id: staffId, name: row.name, email: row.email, roles: row.roles, invited: true },
    secret,
  };
}
