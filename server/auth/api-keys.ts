import { z } from 'zod';
import { bare } from '../../shared/schemas/number-fields.ts';
import { someWords } from '../../shared/schemas/texts.ts';
import type { Tx } from '../database/database.ts';
import { notFound } from '../problems/failure.ts';
import { type Principal, requireAdministrator } from './principal.ts';
import { hintRights } from './rights-hint.ts';
import { isId, newSecret } from './secrets.ts';
import { noteSecurityOf } from './security-events.ts';

export const newKey = z.strictObject({
  name: someWords('what the key is for'),
  scopes: z
    .array(z.enum(['read', 'write']))
    .min(1)
    .max(2)
    .meta({ description: 'what it may do' }),
  days: bare('days until it expires', { least: 1, most: 730, whole: true }).default(365),
});

export const apiKeyView = z
  .object({
    id: z.uuid(),
    name: z.string(),
    prefix: z.string(),
    scopes: z.array(z.string()),
    owner: z.uuid().meta({ description: 'who made it; it ends with them' }),
    createdAt: z.iso.datetime(),
    expiresAt: z.iso.datetime(),
    revokedAt: z.iso.datetime().optional(),
  })
  .meta({ id: 'ApiKey' });
export type ApiKey = z.output<typeof apiKeyView>;

interface Row {
  readonly id: string;
  readonly name: string;
  readonly prefix: string;
  readonly scopes: string[];
  readonly created_by: string;
  readonly created_at: Date;
  readonly expires_at: Date;
  readonly revoked_at: Date | null;
}

function toApiKey(row: Row): ApiKey {
  return {
    id: row.id,
    name: row.name,
    prefix: row.prefix,
    scopes: row.scopes,
    owner: row.created_by,
    createdAt: row.created_at.toISOString(),
    expiresAt: row.expires_at.toISOString(),
    revokedAt: row.revoked_at?.toISOString(),
  };
}

export async function listApiKeys(tx: Tx, principal: Principal): Promise<ApiKey[]> {
  requireAdministrator(principal);
  const rows = await tx
    .selectFrom('api_key')
    .selectAll()
    .where('shop_id', '=', principal.shopId)
    .orderBy('created_at')
    .execute();
  return rows.map(toApiKey);
}

const DAY = 86_400_000;

/** Makes a key. Only its hash is kept; its first letters stay readable so that people can tell keys apart. */
export async function makeApiKey(
  tx: Tx,
  principal: Principal,
  input: { readonly name: string; readonly scopes: readonly string[]; readonly days: number },
  now: Date,
): Promise<{ key: ApiKey; secret: string }> {
  const staff = requireAdministrator(principal);
  const { secret, hash } = newSecret('key');
  const row = await tx
    .insertInto('api_key')
    .values({
      shop_id: principal.shopId,
      name: input.name,
      prefix: secret.slice(0, 8),
      key_hash: hash,
      scopes: [...new Set(input.scopes)],
      created_by: staff.id,
      expires_at: new Date(now.getTime() + input.days * DAY),
    })
    .returningAll()
    .executeTakeFirstOrThrow();
  await noteSecurityOf(tx, principal, 'key-made', input.name);
  return { key: toApiKey(row), secret };
}

export async function revokeApiKey(tx: Tx, principal: Principal, id: string, now: Date): Promise<void> {
  requireAdministrator(principal);
  if (!isId(id)) throw notFound('key');
  const row = await tx
    .updateTable('api_key')
    .set({ revoked_at: now })
    .where('shop_id', '=', principal.shopId)
    .where('id', '=', id)
    .where('revoked_at', 'is', null)
    .returning('name')
    .executeTakeFirst();
  if (row === undefined) throw notFound('key');
  await hintRights(tx, id);
  await noteSecurityOf(tx, principal, 'key-ended', row.name);
}

/** The keys that a person made end with them. */
export async function endKeysOf(tx: Tx, principal: Principal, staffId: string, now: Date): Promise<void> {
  const ended = await tx
    .updateTable('api_key')
    .set({ revoked_at: now })
    .where('shop_id', '=', principal.shopId)
    .where('created_by', '=', staffId)
    .where('revoked_at', 'is', null)
    .returning(['id', 'name'])
    .execute();
  for (const { id, name } of ended) {
    await hintRights(tx, id);
    await noteSecurityOf(tx, principal, 'key-ended', name);
  }
}
