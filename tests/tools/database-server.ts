import pg from 'pg';
import type { TestProject } from 'vitest/node';
import { migrate } from '../../server/database/migrate.ts';
import { ensureServiceRole } from '../../server/database/service-role.ts';
import { startThrowaway } from './throwaway-postgres.ts';

declare module 'vitest' {
  interface ProvidedContext {
    ownerUrl: string;
  }
}

export const TEMPLATE = 'benchcall_template';

/** One real PostgreSQL for the whole run, with a migrated template that every test file clones. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const server = await startThrowaway();
  await ensureServiceRole(server.ownerUrl);
  const admin = new pg.Client({ connectionString: server.ownerUrl });
  await admin.connect();
  await admin.query(`create database ${TEMPLATE}`);
  await admin.end();
  const template = new URL(server.ownerUrl);
  template.pathname = `/${TEMPLATE}`;
  await migrate(template.href);
  project.provide('ownerUrl', server.ownerUrl);
  return () => server.stop();
}
