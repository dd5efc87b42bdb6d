import { cp, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { BackupFault } from '../../server/backup/fault.ts';
import { restoreBackup } from '../../server/backup/restore-backup.ts';
import { writeBackup } from '../../server/backup/write-backup.ts';
import { migrate } from '../../server/database/migrate.ts';
import { filledCall } from '../tools/filled-call.ts';
import { type TestService, testService } from '../tools/service.ts';
import { emptyDatabase, queryAt } from './empty-database.ts';

let service: TestService;
let folder: string;
let sound: string;

beforeAll(async () => {
  service = await testService();
  await filledCall(service, await service.person(), 'Heron of the north bank');
  folder = await mkdtemp(path.join(tmpdir(), 'benchcall-backup-'));
  sound = path.join(folder, 'sound');
  await writeBackup(service.database.ownerUrl, sound);
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
  await service.close();
});

const changed = (from: string, to: string) => async (copy: string) => {
  const file = path.join(copy, 'manifest.json');
  const text = await readFile(file, 'utf8');
  expect(text).toContain(from);
  await writeFile(file, text.replace(from, to));
};

/** Each makes a sound backup one that must not be restored. */
const DAMAGES: Readonly<Record<string, readonly [damage: (copy: string) => Promise<unknown>, says: RegExp]>> =
  {
    'a file is missing': [
      (copy) => rm(path.join(copy, 'reading.copy.gz')),
      /reading\.copy\.gz is missing or damaged/,
    ],
    'a file is cut off': [
      async (copy) => {
        const file = path.join(copy, 'event.copy.gz');
        const bytes = await readFile(file);
        await writeFile(file, bytes.subarray(0, bytes.length - 9));
      },
      /event\.copy\.gz is missing or damaged/,
    ],
    'a file is that of another table': [
      (copy) => cp(path.join(copy, 'call.copy.gz'), path.join(copy, 'note.copy.gz')),
      /note\.copy\.gz is damaged/,
    ],
    'the manifest was not written': [(copy) => rm(path.join(copy, 'manifest.json')), /is no backup/],
    'the manifest is of something else': [
      changed('benchcall backup', 'other'),
      /is damaged, or of another version/,
    ],
    'it was made by a newer program': [changed('"migration": "0', '"migration": "9'), /made by a newer one/],
    'a count is another': [changed('"reading": ', '"reading": 1'), /not as many as were backed up/],
  };

describe.each(Object.entries(DAMAGES))('%s', (_name, [damage, says]) => {
  test('it is refused in words, and nothing is restored', async () => {
    const copy = path.join(folder, 'damaged');
    await cp(sound, copy, { recursive: true });
    const target = await emptyDatabase();
    try {
      await damage(copy);
      const refusal = await restoreBackup(target.url, copy).catch((error: unknown) => error);
      expect(refusal).toBeInstanceOf(BackupFault);
      expect(String(refusal)).toMatch(says);
      const [is] = await target.query("select to_regclass('shop') is not null as migrated");
      const shops = is?.migrated === true ? await target.query('select id from shop') : [];
      expect(shops).toEqual([]);
      // The same database takes the sound one afterwards.
      await restoreBackup(target.url, sound);
      expect(await target.query('select count(*)::int as n from shop')).toEqual([{ n: 1 }]);
    } finally {
      await target.drop();
      await rm(copy, { recursive: true, force: true });
    }
  });
});

test('a database that has a shop is not restored into', async () => {
  const before = await service.database.asOwner('select count(*)::int as n from event');
  await expect(restoreBackup(service.database.ownerUrl, sound)).rejects.toThrow(
    /there is a shop in this database already/,
  );
  expect((await service.database.asOwner('select count(*)::int as n from event')).rows).toEqual(before.rows);
});

test('a folder that is there already is left as it is', async () => {
  const had = await readdir(sound);
  await expect(writeBackup(service.database.ownerUrl, sound)).rejects.toThrow(/is there already/);
  expect(await readdir(sound)).toEqual(had);
});

describe('an owner that is no superuser', () => {
  const owner = { name: 'plain_owner', password: 'plain-owner-of-a-test' };
  beforeAll(() =>
    queryAt(
      inject('ownerUrl'),
      `create role ${owner.name} login nosuperuser nobypassrls password '${owner.password}'`,
    ),
  );
  afterAll(() => queryAt(inject('ownerUrl'), `drop role ${owner.name}`));

  test('backs up and restores every shop, though the policies hold it too', async () => {
    const source = await emptyDatabase(owner);
    const target = await emptyDatabase(owner);
    try {
      await migrate(source.url);
      const shop = "select gen_random_uuid() as id, 'A shop' as name";
      const ids: unknown[] = [];
      for (const _each of [1, 2]) {
        const [made] = await source.query(
          `with made as (${shop}), told as (select set_config('app.shop', id::text, false) from made)
           insert into shop (id, name) select id, name from made, told returning id`,
        );
        ids.push(made?.id);
      }
      expect(await source.query('select id from shop'), 'with no shop set it sees none').toEqual([]);
      const backup = path.join(folder, 'plain');
      const { shops } = await writeBackup(source.url, backup);
      expect(shops.map(({ id }) => id).sort()).toEqual(ids.map(String).sort());
      await restoreBackup(target.url, backup);
      const forced = await target.query(
        `select count(*)::int as n from pg_class where relnamespace = 'public'::regnamespace and relrowsecurity and not relforcerowsecurity`,
      );
      expect(forced).toEqual([{ n: 0 }]);
      await expect(writeBackup(target.url, path.join(folder, 'again'))).resolves.toMatchObject({ shops });
    } finally {
      await source.drop();
      await target.drop();
    }
  });

  test('and one that does not own the tables is told so', async () => {
    const url = new URL(service.database.ownerUrl);
    url.username = owner.name;
    url.password = owner.password;
    await service.database.asOwner(`grant select on all tables in schema public to ${owner.name}`);
    try {
      await expect(writeBackup(url.href, path.join(folder, 'stranger'))).rejects.toThrow(
        /plain_owner does not see all rows of answer, /,
      );
    } finally {
      await service.database.asOwner(`drop owned by ${owner.name}`);
    }
    expect(await readdir(folder)).not.toContain('stranger');
  });
});
