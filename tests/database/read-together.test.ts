import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Principal } from '../../server/auth/principal.ts';
import { isCommitted, literal, readLast, readTogether } from '../../server/database/read-together.ts';
import { notifyAtCommit, type Tx } from '../../server/database/statements.ts';
import { loadBuildRecord } from '../../server/records/whole-build/load-build.ts';
import { openCall } from '../tools/call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';
import { wholeCall } from '../tools/whole-call.ts';

/** Several reads in one message; what each answers is held against the same query sent by itself. */
let service: TestService;
let person: Person;
beforeAll(async () => {
  service = await testService();
  person = await service.person();
});
afterAll(() => service.close());

const inShop = <T>(work: (tx: Tx) => Promise<T>) =>
  service.deps.db.shopTransaction(person.shopId, work, 'read');

describe('reads sent together', () => {
  test('answer each under its name what it answers by itself, with the types of its columns', async () => {
    const { buildId } = await wholeCall(service, person);
    const [together, apart] = await inShop(async (tx) => {
      const of = (table: 'reading' | 'event' | 'set_up') =>
        tx.selectFrom(table).selectAll().where('shop_id', '=', person.shopId).where('build_id', '=', buildId);
      const queries = {
        readings: of('reading').orderBy('id'),
        events: of('event').orderBy('seq').limit(3),
        none: of('set_up').where(sql<boolean>`false`),
        build: tx.selectFrom('build').selectAll().where('id', '=', buildId),
      };
      return [
        await readTogether(tx, queries),
        {
          readings: await queries.readings.execute(),
          events: await queries.events.execute(),
          none: await queries.none.execute(),
          build: await queries.build.execute(),
        },
      ];
    });
    expect(together).toEqual(apart);
    expect(together.readings.length).toBeGreaterThan(0);
    expect(together.events).toHaveLength(3);
    expect(together.none).toEqual([]);
    expect(together.build[0]?.created_at).toBeInstanceOf(Date);
    expect(together.build[0]?.last_seq).toBeTypeOf('number');
  });

  test('see no other shop, though they ask for its rows by name', async () => {
    const other = await service.person();
    const { buildId } = await openCall(service, other);
    const { build } = await inShop((tx) =>
      readTogether(tx, {
        build: tx
          .selectFrom('build')
          .selectAll()
          .where('shop_id', '=', other.shopId)
          .where('id', '=', buildId),
      }),
    );
    expect(build).toEqual([]);
  });

  test('take whole numbers and UUIDs and nothing that could say more', async () => {
    const id = '0b8de2a4-6a3e-4a0b-9f0e-6f2f3c1d9a77';
    expect([literal(id), literal(id.toUpperCase()), literal(12), literal(-3)]).toEqual([
      `'${id}'`,
      `'${id.toUpperCase()}'`,
      '12',
      '(-3)',
    ]);
    for (const value of [
      "x'; drop table build; --",
      `${id}'`,
      `${id}\n`,
      1.5,
      2 ** 60,
      true,
      null,
      undefined,
      [id],
    ])
      expect(() => literal(value), String(value)).toThrow('only a UUID or a whole number');
    const sly = (label: string) =>
      inShop((tx) =>
        readTogether(tx, { build: tx.selectFrom('build').selectAll().where('label', '=', label) }),
      );
    await expect(sly("' or true")).rejects.toThrow('only a UUID or a whole number');
    const two = inShop((tx) =>
      readTogether(tx, { two: tx.selectNoFrom(sql<number>`1; select 2`.as('two')) }),
    );
    await expect(two).rejects.toThrow('no semicolon');
  });
});

describe('the last read of a transaction', () => {
  const one = (tx: Tx) => ({
    build: tx.selectFrom('build').select('id').where('shop_id', '=', person.shopId),
  });

  test('commits it: whatever is asked after it is refused', async () => {
    const asked = inShop(async (tx) => {
      await readLast(tx, one(tx));
      expect(isCommitted(tx)).toBe(true);
      return one(tx).build.execute();
    });
    await expect(asked).rejects.toThrow('this transaction has made its last read');
    // The connection is given back whole: the next transaction on it sees its own shop alone.
    const { rows } = await service.database.asService('select id from build');
    expect(rows).toEqual([]);
    expect((await inShop((tx) => one(tx).build.execute())).length).toBeGreaterThan(0);
  });

  test('that fails leaves it open, to be rolled back', async () => {
    const failing = inShop((tx) => readLast(tx, { wrong: tx.selectNoFrom(sql<number>`1 / 0`.as('wrong')) }));
    await expect(failing).rejects.toMatchObject({ code: '22012' });
    const { rows } = await service.database.asOwner(
      `select count(*)::int as open from pg_stat_activity where state like 'idle in transaction%' and datname = current_database()`,
    );
    expect(rows).toEqual([{ open: 0 }]);
  });

  test('of one that writes commits what was written, and its notifications with it', async () => {
    const { buildId } = await openCall(service, person, 'before');
    await service.deps.db.shopTransaction(person.shopId, async (tx) => {
      await tx.updateTable('build').set({ label: 'after' }).where('id', '=', buildId).execute();
      notifyAtCommit(tx, 'bench_test', 'kept 1');
      await readLast(tx, one(tx));
    });
    const { rows } = await service.database.asOwner('select label from build where id = $1', [buildId]);
    expect(rows).toEqual([{ label: 'after' }]);
  });
});

describe('the record of a build', () => {
  const builder = (callId: string, buildId: string): Principal => ({
    kind: 'builder',
    shopId: person.shopId,
    id: crypto.randomUUID(),
    name: 'B',
    buildId,
    callId,
  });

  test('is the same by its own id and by that of a call, in capitals too', async () => {
    const { callId, buildId } = await wholeCall(service, person);
    const desk: Principal = {
      kind: 'staff',
      shopId: person.shopId,
      id: person.staffId,
      name: 'Test person',
      roles: ['desk'],
      sessionId: '',
      shortcuts: true,
    };
    const byBuild = await inShop((tx) => loadBuildRecord(tx, desk, { buildId: buildId.toUpperCase() }));
    const byCall = await inShop((tx) => loadBuildRecord(tx, desk, { callId }));
    expect(byCall).toEqual(byBuild);
    expect(byCall.events.at(-1)?.seq).toBe(byCall.build.version);
    expect(byCall.shareLinks).toHaveLength(1);
  });

  test('shows a builder’s link its own call and no links; other calls and builds are not there', async () => {
    const { callId, buildId } = await wholeCall(service, person);
    const elsewhere = await openCall(service, person);
    const load = (principal: Principal, which: Parameters<typeof loadBuildRecord>[2]) =>
      inShop((tx) => loadBuildRecord(tx, principal, which));
    const own = await load(builder(callId, buildId), { callId });
    expect(own.calls.map(({ id }) => id)).toEqual([callId]);
    expect(own.shareLinks).toEqual([]);
    const stranger = builder(elsewhere.callId, elsewhere.buildId);
    for (const which of [{ callId }, { buildId }, { callId: crypto.randomUUID() }])
      await expect(load(stranger, which)).rejects.toMatchObject({ code: 'not-found' });
  });
});
