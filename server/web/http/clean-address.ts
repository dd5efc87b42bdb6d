import type { FastifyInstance } from 'fastify';
import fp from 'fastify-plugin';
import { Failure } from '../../problems/failure.ts';

/** Nothing of ours has U+0000 in its address, and a database can't take it as a text. */
export const cleanAddress = fp(
  (app: FastifyInstance, _options, done) => {
    app.addHook('onRequest', (request, _reply, next) => {
      next(
        request.url.includes('%00')
          ? new Failure('bad-request', 'the address has a character that can’t be read')
          : undefined,
      );
    });
    done();
  },
  { name: 'clean-address' },
);
