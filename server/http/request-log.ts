import type { FastifyLoggerOptions, FastifyRequest } from 'fastify';

/** A path as it may be logged: without the query, and without the secret of a share or first-run link. */
export function loggablePath(url: string): string {
  const path = url.split('?')[0] ?? '';
  return path.replace(/bc[a-z]_[A-Za-z0-9_-]+/g, '(secret)').slice(0, 300);
}

/** Structured lines on stdout: no bodies, no headers, no tokens. */
export function requestLog(level: string): FastifyLoggerOptions {
  return {
    level,
    serializers: {
      req: (request: FastifyRequest) => ({ method: request.method, path: loggablePath(request.url) }),
      res: (reply) => ({ status: reply.statusCode }),
    },
  };
}
