import { writeFile } from 'node:fs/promises';
import { migrate } from '../../server/database/migrate.ts';
import { ensureServiceRole } from '../../server/database/service-role.ts';
import { describeSchema } from './describe-schema.ts';
import { startThrowaway } from './throwaway-postgres.ts';

/** Writes migrations/schema.sql again; a test compares it, so that each migration shows its effect in review. */
const server = await startThrowaway();
try {
  await ensureServiceRole(server.ownerUrl);
  await migrate(server.ownerUrl);
  await writeFile(
    new URL('../../migrations/schema.sql', import.meta.url),
    await describeSchema(server.ownerUrl),
  );
} finally {
  await server.stop();
}
