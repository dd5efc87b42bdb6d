import { createHmac } from 'node:crypto';
import pg from 'pg';

/** The role the service works as. It owns nothing and can't bypass row-level security. */
const SERVICE_ROLE = 'benchcall_service';

/** Limits that hold for every connection of the role, through any pooler (ALTER ROLE, not start options). */
const LIMITS = {
  statement_timeout: '15s',
  lock_timeout: '5s',
  idle_in_transaction_session_timeout: '15s',
};

/**
 * The service's own URL on the owner's server. Its password is derived from the owner's, so that every process
 * that knows the one knows the other and nothing more has to be kept anywhere.
 */
export function serviceUrl(ownerUrl: string): string {
  const url = new URL(ownerUrl);
  url.username = SERVICE_ROLE;
  url.password = createHmac('sha256', decodeURIComponent(new URL(ownerUrl).password))
    .update('benchcall service role')
    .digest('base64url');
  return url.href;
}

/** Makes the role, or mends it: several processes may do this at once. */
export async function ensureServiceRole(ownerUrl: string): Promise<void> {
  const client = new pg.Client({ connectionString: ownerUrl, connectionTimeoutMillis: 10_000 });
  await client.connect();
  try {
    await client.query('begin');
    // ALTER ROLE by two sessions at once fails with "tuple concurrently updated".
    await client.query(`select pg_advisory_xact_lock(hashtext('${SERVICE_ROLE}'))`);
    const { rowCount } = await client.query('select 1 from pg_roles where rolname = $1', [SERVICE_ROLE]);
    const password = client.escapeLiteral(new URL(serviceUrl(ownerUrl)).password);
    if (rowCount === 0) {
      await client.query(
        `create role ${SERVICE_ROLE} login nosuperuser nocreatedb nocreaterole noinherit nobypassrls password ${password}`,
      );
    } else {
      await client.query(`alter role ${SERVICE_ROLE} login password ${password}`);
    }
    for (const [setting, value] of Object.entries(LIMITS)) {
      await client.query(`alter role ${SERVICE_ROLE} set ${setting} = '${value}'`);
    }
    await client.query('commit');
  } finally {
    await client.end();
  }
}
