import { sql } from 'kysely';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { asPrincipal } from '../../server/auth/resolve.ts';
import type { Tx } from '../../server/database/database.ts';
import { notifyAtCommit } from '../../server/database/statements.ts';
import { openCall } from '../tools/call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** What PostgreSQL promises of a transaction (manual, BEGIN, NOTIFY, SET LOCAL) holds for ours. */
let service: TestService;
let person: Person;
let secret: string;
beforeAll(async () => {
  service = await testService();
  person = await service.person();
  secret = person.bearer.authorization.replace('Bearer ', '');
});
afterAll(() => service.close());

const settings = async (tx: Tx) =>
  (
    await sql<{ shop: string; lookup: string }>`
      select current_setting('app.shop', true) as shop, current_setting('app.lookup', true) as lookup`.execute(
      tx,
    )
  ).rows[0];

describe('a transaction that finds its caller', () => {
  test('is one of their shop when the work begins, and the secret opens nothing more', async () => {
    const found = await asPrincipal(service.deps.db, secret, new Date(), settings);
    expect(found?.answer).toEqual({ shop: person.shopId, lookup: '' });
  });

  test('leaves neither shop nor secret on the connection', async () => {
    const { pool } = service.deps.db;
    const used = await asPrincipal(service.deps.db, secret, new Date(), async (tx) => {
      const { rows } = await sql<{ pid: number }>`select pg_backend_pid() as pid`.execute(tx);
      return rows[0]?.pid;
    });
    const lent = await Promise.all(Array.from({ length: pool.totalCount }, () => pool.connect()));
    onTestFinished(() => lent.forEach((client) => void client.release()));
    const left = await Promise.all(
      lent.map(async (client) => {
        const { rows } = await client.query(
          `select pg_backend_pid() as pid, coalesce(current_setting('app.shop', true), '') as shop, coalesce(current_setting('app.lookup', true), '') as lookup`,
        );
        return rows[0];
      }),
    );
    expect(left).toContainEqual({ pid: used?.answer, shop: '', lookup: '' });
  });

  test('is rolled back whole by a failure of the work, but the use of the session is written down', async () => {
    const { buildId } = await openCall(service, person, 'before');
    await service.database.asOwner(`update staff_session set seen_at = now() - interval '1 hour'`);
    const failing = asPrincipal(service.deps.db, secret, new Date(), async (tx, principal) => {
      await tx.updateTable('build').set({ label: 'after' }).where('shop_id', '=', principal.shopId).execute();
      throw new Error('refused');
    });
    await expect(failing).rejects.toThrow('refused');
    const { rows } = await service.database.asOwner(
      `select label, (select min(now() - seen_at) < interval '1 minute' from staff_session) as seen from build where id = $1`,
      [buildId],
    );
    expect(rows).toEqual([{ label: 'before', seen: true }]);
  });
});

describe('a transaction that only reads', () => {
  test('can’t write: the server refuses it (SQLSTATE 25006)', async () => {
    const writing = service.deps.db.shopTransaction(
      person.shopId,
      (tx) => tx.updateTable('build').set({ label: 'x' }).where('shop_id', '=', person.shopId).execute(),
      'read',
    );
    await expect(writing).rejects.toMatchObject({ code: '25006' });
  });

  test('sees one moment all along; one that writes sees what others have committed meanwhile', async () => {
    const { buildId } = await openCall(service, person, 'first');
    const labels = (access: 'read' | 'write') =>
      service.deps.db.shopTransaction(
        person.shopId,
        async (tx) => {
          const ask = () => tx.selectFrom('build').select('label').where('id', '=', buildId).execute();
          const before = await ask();
          await service.database.asOwner(`update build set label = label || '+' where id = $1`, [buildId]);
          return [...before, ...(await ask())].map(({ label }) => label);
        },
        access,
      );
    expect(await labels('read')).toEqual(['first', 'first']);
    expect(await labels('write')).toEqual(['first+', 'first++']);
  });
});

describe('a commit', () => {
  async function heard(): Promise<{ client: pg.Client; payloads: string[] }> {
    const client = new pg.Client({ connectionString: service.database.ownerUrl });
    await client.connect();
    onTestFinished(() => client.end());
    const payloads: string[] = [];
    client.on('notification', ({ payload }) => payloads.push(payload ?? ''));
    await client.query('listen bench_test');
    return { client, payloads };
  }

  test('brings its notifications; a rollback brings none', async () => {
    const { client, payloads } = await heard();
    const lost = service.deps.db.shopTransaction(person.shopId, async (tx) => {
      notifyAtCommit(tx, 'bench_test', 'lost 1');
      throw new Error('refused');
    });
    await expect(lost).rejects.toThrow('refused');
    await service.deps.db.shopTransaction(person.shopId, async (tx) => {
      notifyAtCommit(tx, 'bench_test', 'kept 1');
      notifyAtCommit(tx, 'bench_test', 'kept 2');
    });
    // Notifications come before the answer to a later statement of the listener (manual, NOTIFY).
    await client.query('select 1');
    expect(payloads).toEqual(['kept 1', 'kept 2']);
  });

  test('after an error that the work caught is told as failed: the server rolls back instead', async () => {
    const caught = service.deps.db.shopTransaction(person.shopId, async (tx) => {
      await sql`select 1 / 0`.execute(tx).catch(() => undefined);
    });
    await expect(caught).rejects.toThrow('rolled back instead of committed');
  });

  test('takes no notification that could say more than it should', async () => {
    const sly = service.deps.db.shopTransaction(person.shopId, async (tx) => {
      notifyAtCommit(tx, 'bench_test', "x'; drop table build; --");
    });
    await expect(sly).rejects.toThrow('not a plain notification');
  });
});
