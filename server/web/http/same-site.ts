import type { FastifyInstance, FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import { Failure } from '../../problems/failure.ts';

const UNSAFE = new Set(['POST', 'PUT', 'PATCH', 'DELETE']);

function header(request: FastifyRequest, name: string): string | undefined {
  const value = request.headers[name];
  return typeof value === 'string' ? value : undefined;
}

function comesFromElsewhere(request: FastifyRequest, opening: string): boolean {
  const site = header(request, 'sec-fetch-site');
  if (site !== undefined) return site !== 'same-origin' && site !== 'none';
  const origin = header(request, 'origin');
  // Every browser of today sends one of the two with a form; a program with neither has no cookies to abuse.
  if (origin === undefined) return false;
  // A page sent with no-referrer posts as Origin "null" (Fetch, "append a request Origin header"), and over
  // plain http Sec-Fetch-Site is missing too. A Strict cookie that the page set comes back from our own page alone.
  if (origin === 'null') return request.cookies[opening] === undefined;
  try {
    return new URL(origin).host !== request.host;
  } catch {
    return true;
  }
}

/**
 * Refuses forms that another site makes a browser send. Pages sign in by cookie; the JSON API ignores cookies
 * and needs no such guard.
 */
export const sameSite = fp(
  (app: FastifyInstance, options: { opening: string }, done) => {
    app.addHook('onRequest', (request, _reply, next) => {
      const guarded = UNSAFE.has(request.method) && !request.url.startsWith('/api/');
      if (guarded && comesFromElsewhere(request, options.opening)) {
        next(new Failure('cross-site', 'open the page here and send the form from it'));
        return;
      }
      next();
    });
    done();
  },
  { name: 'same-site' },
);
