import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { memberOf } from '../../shared/member.ts';
import { problemSchema } from './api-schemas.ts';

/** Is told of each JSON answer with the schema declared for it, if there is one; throws to hold it back. */
export type AnswerCheck = (route: string, schema: z.ZodType | undefined, json: string) => void;

/** The schema that the route declares for the status; a problem is one wherever it comes from. */
function declaredFor(request: FastifyRequest, reply: FastifyReply, type: string): z.ZodType | undefined {
  const responses: unknown = request.routeOptions.schema?.response;
  const status = String(reply.statusCode);
  const found = memberOf(responses, status) ?? memberOf(responses, `${status.slice(0, 1)}xx`);
  if (found instanceof z.ZodType) return found;
  return type.startsWith('application/problem+json') ? problemSchema : undefined;
}

/** Shows every JSON answer to `check` in the text it leaves in, whichever way it was made. */
export function checkAnswers(app: FastifyInstance, check: AnswerCheck): void {
  app.addHook('onSend', async (request, reply, payload) => {
    const type = String(reply.getHeader('content-type') ?? '');
    if (typeof payload === 'string' && /^application\/([a-z-]+\+)?json/.test(type)) {
      const where = `${request.method} ${request.routeOptions.url ?? request.url} ${reply.statusCode}`;
      check(where, declaredFor(request, reply, type), payload);
    }
    return payload;
  });
}
