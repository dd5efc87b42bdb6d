import type { FastifyLoggerOptions, FastifyRequest } from 'fastify';
import { defined } from '../../../shared/defined.ts';
import { memberOf } from '../../../shared/member.ts';

/** A path as it may be logged: without the query, and without the secret of a share or first-run link. */
export function loggablePath(url: string): string {
  const path = url.split('?')[0] ?? '';
  return path
    .replace(/^\/+(b|first-administrator)\/.*/i, '/$1/(secret)')
    .replace(/bc[a-z](_|%5f)[A-Za-z0-9_%-]+/gi, '(secret)')
    .slice(0, 300);
}

/** What may be known of an error: a database tells the values of the failing row in other members. */
interface LoggedError {
  type: string;
  message: string;
  stack: string;
  [more: string]: unknown;
}

function loggableError(error: unknown): LoggedError {
  if (!(error instanceof Error)) return { type: typeof error, message: 'not an error', stack: '' };
  const code = memberOf(error, 'code');
  return {
    type: error.name,
    message: error.message,
    ...(typeof code === 'string' ? { code } : {}),
    stack: error.stack ?? '',
    ...(error.cause instanceof Error ? { cause: loggableError(error.cause) } : {}),
  };
}

/** Where the lines go when it is not stdout. */
export interface LogStream {
  write(line: string): void;
}

/** Structured lines on stdout: no bodies, no headers, no tokens. */
export function requestLog(level: string, stream: LogStream | undefined): FastifyLoggerOptions {
  return {
    level,
    ...defined({ stream }),
    serializers: {
      req: (request: FastifyRequest) => ({ method: request.method, path: loggablePath(request.url) }),
      err: loggableError,
      res: (reply) => ({ status: reply.statusCode }),
    },
  };
}
