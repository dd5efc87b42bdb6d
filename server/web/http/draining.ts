import type { FastifyInstance } from 'fastify';
import fp from 'fastify-plugin';
import { ServiceBusy } from '../../problems/failure.ts';

/**
 * While the process is ending, a request on a connection that is still open is told to go elsewhere; what
 * was under way before is finished. Whether the process lives and is ready can be asked to the last.
 */
export const draining = fp(
  (app: FastifyInstance, options: { lifecycle: { readonly draining: boolean } }, done) => {
    app.addHook('onRequest', (request, reply, next) => {
      if (!options.lifecycle.draining) return next();
      reply.header('connection', 'close');
      next(request.url.startsWith('/health/') ? undefined : new ServiceBusy('the service is ending'));
    });
    done();
  },
  { name: 'draining' },
);
