import type { FastifyInstance } from 'fastify';
import fp from 'fastify-plugin';

/**
 * Says once when somebody passes on requests whom the settings do not name: all who come by way of it then count as one
 * address, and slow one another down. It may as well be a client who made the header up; the address tells which.
 */
export const forwarded = fp(
  (app: FastifyInstance, _options, done) => {
    let isSaid = false;
    app.addHook('onRequest', (request, _reply, next) => {
      // Of a proxy that is named the addresses behind it are read as well.
      const isUnnamed = (request.ips?.length ?? 1) < 2;
      if (!isSaid && isUnnamed && request.headers['x-forwarded-for'] !== undefined) {
        isSaid = true;
        request.log.warn(
          { from: request.socket.remoteAddress },
          'X-Forwarded-For came from an address that TRUSTED_PROXIES does not name: whoever comes by way of it counts as one address',
        );
      }
      next();
    });
    done();
  },
  { name: 'forwarded' },
);
