import { hashOf, newSecret } from '../../../server/auth/secrets.ts';
import type { Database } from '../../../server/database/database.ts';
import { METHOD } from '../../tools/call.ts';

export interface BenchCall {
  readonly buildId: string;
  readonly setUpId: string;
}

type Json = Readonly<Record<string, unknown>>;

/** Sends JSON to a process and answers what it answered, with the moment at which it did. */
export async function post(
  base: string,
  bearer: string,
  path: string,
  body: object,
): Promise<{ json: Json; at: number }> {
  const response = await fetch(base + path, {
    method: 'POST',
    headers: { authorization: `Bearer ${bearer}`, 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  const at = performance.now();
  const json: unknown = await response.json();
  if (response.status !== 201 || typeof json !== 'object' || json === null)
    throw new Error(`${path} answered ${response.status}: ${JSON.stringify(json)}`);
  return { json: Object.fromEntries(Object.entries(json)), at };
}

/** A person of a shop of their own; answers the secret of a session. */
export async function somebody(db: Database): Promise<string> {
  const shopId = crypto.randomUUID();
  const { secret, hash } = newSecret('session');
  await db.shopTransaction(shopId, async (tx) => {
    await tx.insertInto('shop').values({ id: shopId, name: 'Bench shop' }).execute();
    const email = `${shopId}@bench.invalid`;
    const { id } = await tx
      .insertInto('staff')
      .values({
        shop_id: shopId,
        name: 'Bench',
        email,
        email_key: hashOf(email),
        password_hash: '',
        roles: ['desk'],
      })
      .returning('id')
      .executeTakeFirstOrThrow();
    const expires_at = new Date(Date.now() + 3_600_000);
    await tx
      .insertInto('staff_session')
      .values({ shop_id: shopId, staff_id: id, token_hash: hash, expires_at })
      .execute();
  });
  return secret;
}

/** Calls with a set-up each, ready to take readings. */
export async function openCalls(base: string, bearer: string, count: number): Promise<BenchCall[]> {
  const calls: BenchCall[] = [];
  for (let made = 0; made < count; made += 1) {
    const call = await post(base, bearer, '/api/v1/calls', {
      goal: 'verify-ratio',
      buildLabel: `Bench build ${made}`,
      callerName: 'Bench caller',
    });
    const buildId = String(call.json.buildId);
    const setUp = await post(base, bearer, `/api/v1/builds/${buildId}/set-ups`, {
      cylinder: 1,
      valve: 'intake',
      method: METHOD,
    });
    calls.push({ buildId, setUpId: String(setUp.json.id) });
  }
  return calls;
}
