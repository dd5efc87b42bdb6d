import type { FastifyInstance } from 'fastify';
import type { Deps } from './deps.ts';

/** Live says that the process answers; ready asks the database and compares its schema with ours. */
export function healthRoutes(app: FastifyInstance, deps: Deps): void {
  app.get('/health/live', { schema: { hide: true } }, () => ({ status: 'live' }));
  app.get('/health/ready', { schema: { hide: true } }, async (_request, reply) => {
    if (deps.lifecycle.draining) return reply.code(503).send({ status: 'draining' });
    try {
      const schema = await deps.db.newestMigration();
      if (schema === deps.newestMigration) return { status: 'ready', schema };
      return await reply.code(503).send({ status: 'schema-differs', schema, expected: deps.newestMigration });
    } catch {
      return reply.code(503).header('retry-after', '2').send({ status: 'no-database' });
    }
  });
}
