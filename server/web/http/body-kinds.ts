import type { FastifyInstance } from 'fastify';
import fp from 'fastify-plugin';
import { Failure } from '../../problems/failure.ts';

const FORM = /^\s*application\/x-www-form-urlencoded\b/i;
const JSON_BODY = /^\s*application\/json\b/i;

/**
 * A JSON route takes no form and a page no JSON. Both kinds of body can be read here, but the values of one
 * are not those of the other, and another site can make a browser send a form.
 */
export const bodyKinds = fp(
  (app: FastifyInstance, _options, done) => {
    app.addHook('onRequest', (request, _reply, next) => {
      const type = request.headers['content-type'] ?? '';
      const wrong = request.url.startsWith('/api/') ? FORM : JSON_BODY;
      next(wrong.test(type) ? new Failure('media-type-not-taken', `${type} is not taken here`) : undefined);
    });
    done();
  },
  { name: 'body-kinds' },
);
