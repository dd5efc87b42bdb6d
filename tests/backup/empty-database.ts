import { randomBytes } from 'node:crypto';
import pg from 'pg';
import { inject } from 'vitest';

/** A database that nobody has migrated yet, as an operator makes one to restore into. */
export interface EmptyDatabase {
  readonly url: string;
  query(text: string): Promise<Record<string, unknown>[]>;
  drop(): Promise<void>;
}

/** Runs one text on a database. */
export async function queryAt(url: string, text: string): Promise<Record<string, unknown>[]> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return (await client.query<Record<string, unknown>>(text)).rows;
  } finally {
    await client.end();
  }
}

/** `owner`: whose it is; left out, the owner of the server. */
export async function emptyDatabase(owner?: {
  readonly name: string;
  readonly password: string;
}): Promise<EmptyDatabase> {
  const server = inject('ownerUrl');
  const name = `restored_${randomBytes(8).toString('hex')}`;
  await queryAt(server, `create database ${name}${owner === undefined ? '' : ` owner ${owner.name}`}`);
  const url = new URL(server);
  url.pathname = `/${name}`;
  if (owner !== undefined) {
    url.username = owner.name;
    url.password = owner.password;
  }
  return {
    url: url.href,
    query: (text) => queryAt(url.href, text),
    drop: async () => void (await queryAt(server, `drop database ${name} with (force)`)),
  };
}
