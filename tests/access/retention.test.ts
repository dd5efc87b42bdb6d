import { afterAll, beforeAll, expect, test } from 'vitest';
import { hashOf } from '../../server/auth/secrets.ts';
import { removePast } from '../../server/start/retention.ts';
import { openCall } from '../tools/call.ts';
import { makeLink } from '../tools/filled-call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** What is past its time goes, in every shop, and nothing else does. */
let service: TestService;
let people: readonly Person[];
beforeAll(async () => {
  service = await testService();
  people = [await service.person(), await service.person()];
});
afterAll(() => service.close());

const owner = (text: string, values: unknown[]) => service.database.asOwner(text, values);

async function fill({ shopId, staffId }: Person, days: number): Promise<void> {
  const ago = `now() - ${days} * interval '1 day'`;
  await owner(
    `insert into security_event (shop_id, kind, who, happened_at) values ($1, 'signed-in', $2, ${ago})`,
    [shopId, `${days} days ago`],
  );
  const hash = () => hashOf(crypto.randomUUID());
  await owner(
    `insert into staff_device (shop_id, staff_id, token_hash, expires_at) values ($1, $2, $3, ${ago})`,
    [shopId, staffId, hash()],
  );
  await owner(
    `insert into staff_session (shop_id, staff_id, token_hash, expires_at, ended_at) values ($1, $2, $3, now() + interval '1 day', ${ago})`,
    [shopId, staffId, hash()],
  );
  await owner(
    `insert into password_link (shop_id, staff_id, token_hash, expires_at, used_at) values ($1, $2, $3, ${ago}, ${ago})`,
    [shopId, staffId, hash()],
  );
  await owner(
    `insert into idempotency (shop_id, caller, method, path, key, request_hash, status, body, created_at)
     values ($1, 'x', 'POST', '/', $2, '', 200, '{}', ${ago})`,
    [shopId, crypto.randomUUID()],
  );
}

const count = async (table: string, shopId: string): Promise<number> =>
  Number((await owner(`select count(*)::int as n from ${table} where shop_id = $1`, [shopId])).rows[0]?.n);

test('answers and sessions after 30 days, known browsers at their end, the list of who came in after a year', async () => {
  for (const person of people) for (const days of [-1, 1, 29, 31, 364, 366]) await fill(person, days);
  const removed = await removePast(service.deps.db.pool);
  expect(removed).toEqual({
    idempotency: 6,
    staff_session: 6,
    builder_session: 0,
    staff_device: 10,
    password_link: 6,
    security_event: 2,
  });
  for (const { shopId } of people) {
    expect(await count('security_event', shopId)).toBe(5);
    // The session that the person works with is one more.
    expect(await count('staff_session', shopId)).toBe(4);
    expect(await count('idempotency', shopId)).toBe(3);
    expect(await count('staff_device', shopId)).toBe(1);
  }
  expect(Object.values(await removePast(service.deps.db.pool))).toEqual([0, 0, 0, 0, 0, 0]);
});

test('what a builder’s link opened goes once the link is long over; one that is open stays', async () => {
  const [person] = people;
  if (person === undefined) throw new Error('nobody');
  const { callId } = await openCall(service, person);
  await makeLink(service, person, callId);
  expect((await removePast(service.deps.db.pool)).builder_session).toBe(0);
  await owner(`update builder_session set expires_at = now() - interval '31 days' where shop_id = $1`, [
    person.shopId,
  ]);
  expect((await removePast(service.deps.db.pool)).builder_session).toBe(1);
});

test('a shop can’t delete what is another’s, past its time or not, as long as it says which it means', async () => {
  const [one, other] = people;
  if (one === undefined || other === undefined) throw new Error('nobody');
  await fill(other, 400);
  const before = await count('security_event', other.shopId);
  await service.deps.db.shopTransaction(one.shopId, (tx) =>
    tx.deleteFrom('security_event').where('shop_id', '=', other.shopId).execute(),
  );
  expect(await count('security_event', other.shopId)).toBe(before);
});
