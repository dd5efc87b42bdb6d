import type { FastifyInstance } from 'fastify';

/** Reads bodies of JSON by `read`, which throws what is wrong with one. */
export function jsonBodies(app: FastifyInstance, read: (bytes: Buffer) => unknown): void {
  app.addContentTypeParser('application/json', { parseAs: 'buffer' }, (_request, body, done) => {
    try {
      done(null, read(typeof body === 'string' ? Buffer.from(body) : body));
    } catch (error) {
      done(error instanceof Error ? error : new Error(String(error)));
    }
  });
}
