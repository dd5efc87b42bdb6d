import pg from 'pg';
import { makeFirstLink } from '../auth/first-administrator.ts';
import type { Deps } from '../web/deps.ts';
import { demoCallLink, seedDemo } from './demo.ts';

export type FirstRun =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'first-administrator'; readonly secret: string }
  | {
      readonly kind: 'demo';
      readonly email: string;
      readonly password: string;
      readonly callId: string;
      readonly link: string;
    };

const DAY = 86_400_000;

/** Whether there is any shop is asked as the owner of the tables: the service itself sees none without a shop set. */
async function shops(ownerUrl: string): Promise<{ any: boolean; demo: string | undefined }> {
  const client = new pg.Client({ connectionString: ownerUrl, connectionTimeoutMillis: 10_000 });
  await client.connect();
  try {
    // An owner that is no superuser is itself held by the forced policies, save where it says that it reads the whole.
    await client.query("begin read only; set local app.whole = 'read'");
    const { rows } = await client.query<{ id: string; is_demo: boolean }>(
      'select id, is_demo from shop order by created_at limit 20',
    );
    await client.query('rollback');
    return { any: rows.length > 0, demo: rows.find((row) => row.is_demo)?.id };
  } finally {
    await client.end();
  }
}

async function firstAdministratorLink(deps: Deps, ownerUrl: string): Promise<FirstRun> {
  const anyShop = async () => (await shops(ownerUrl)).any;
  const secret = await makeFirstLink(deps.db, anyShop, new Date(deps.now().getTime() + DAY));
  return secret === undefined ? { kind: 'nothing' } : { kind: 'first-administrator', secret };
}

/** An empty database gets the demo shop in development, and a one-time link for its first administrator in production. */
export async function firstRun(deps: Deps, ownerUrl: string): Promise<FirstRun> {
  const found = await shops(ownerUrl);
  if (deps.config.NODE_ENV === 'production')
    return found.any ? { kind: 'nothing' } : firstAdministratorLink(deps, ownerUrl);
  if (deps.config.NODE_ENV === 'test') return { kind: 'nothing' };
  if (!found.any) return seedDemo(deps);
  return found.demo === undefined ? { kind: 'nothing' } : demoCallLink(deps, found.demo);
}
