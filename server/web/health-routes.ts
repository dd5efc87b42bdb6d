import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { codeOf } from '../database/busy.ts';
import type { Deps } from './deps.ts';

/** The service's role may not use the tables: they came here without its rights. */
const INSUFFICIENT_PRIVILEGE = '42501';

const live = z.object({ status: z.literal('live') });
const ready = z.object({ status: z.literal('ready'), schema: z.string() });
const notReady = z.object({
  status: z.enum(['draining', 'schema-differs', 'no-rights', 'no-database']),
  schema: z.string().optional(),
  expected: z.string().optional(),
});

/** Live says that the process answers; ready asks the database and compares its schema with ours. */
export function healthRoutes(app: FastifyInstance, deps: Deps): void {
  app.get('/health/live', { schema: { hide: true, response: { 200: live } } }, () => ({ status: 'live' }));
  const responses = { 200: ready, 503: notReady };
  app.get('/health/ready', { schema: { hide: true, response: responses } }, async (_request, reply) => {
    if (deps.lifecycle.draining) return reply.code(503).send({ status: 'draining' });
    try {
      const schema = await deps.db.newestMigration();
      if (schema === deps.newestMigration) return { status: 'ready', schema };
      return await reply.code(503).send({ status: 'schema-differs', schema, expected: deps.newestMigration });
    } catch (error) {
      if (codeOf(error) === INSUFFICIENT_PRIVILEGE) return reply.code(503).send({ status: 'no-rights' });
      return reply.code(503).header('retry-after', '2').send({ status: 'no-database' });
    }
  });
}
