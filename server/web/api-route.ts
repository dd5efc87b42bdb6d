import type { FastifyInstance, FastifyReply, FastifyRequest, HTTPMethods } from 'fastify';
import { z } from 'zod';
import { InputFaults } from '../../shared/problems/faults.ts';
import type { Sendable, Sent } from '../../shared/schemas/answer.ts';
import type { Principal } from '../auth/principal.ts';
import type { Tx } from '../database/database.ts';
import { noteBeforeStop } from '../events/tx-notes.ts';
import { Failure, RefusedWith } from '../problems/failure.ts';
import type { ProblemCode } from '../problems/registry.ts';
import { problemResponses } from './api-schemas.ts';
import type { Deps } from './deps.ts';
import { largeBody } from './large-body.ts';
import { apiPrincipal, asApiPrincipal } from './principals.ts';
import { idempotencyKey, runOnce } from './run-once.ts';
import { checked, checkedParams } from './validate.ts';

interface Described {
  readonly operationId: string;
  readonly tag: string;
  readonly summary: string;
}

interface Given<Params, Query, Body> {
  readonly principal: Principal;
  readonly params: Params;
  readonly query: Query;
  readonly body: Body;
  readonly request: FastifyRequest;
}

/** What a command answers. */
interface Done<A extends z.ZodObject> {
  readonly body: Sent<z.output<A>>;
  /** Fields of the first answer alone, by which a secret is told; the body has them undefined. */
  readonly once?: { readonly [K in keyof A['shape']]?: Sendable<A['shape'][K]> };
  readonly location?: string;
  readonly etag?: string;
}

const nothing = z.strictObject({});

function schemaOf(described: Described, parts: object, status: number, answer: z.ZodType) {
  return {
    operationId: described.operationId,
    tags: [described.tag],
    summary: described.summary,
    security: [{ bearer: [] }],
    ...parts,
    response: { [status]: answer, ...problemResponses },
  };
}

/** A JSON route that reads: one transaction of the caller's shop. */
export function readRoute<P extends z.ZodType, Q extends z.ZodType, A extends z.ZodType>(
  app: FastifyInstance,
  deps: Deps,
  route: Described & {
    readonly url: string;
    readonly params: P;
    readonly query: Q;
    readonly answer: A;
    read(
      tx: Tx,
      req: Given<z.output<P>, z.output<Q>, undefined>,
      reply: FastifyReply,
    ): Promise<Sent<z.output<A>>>;
  },
): void {
  const { query } = route;
  app.route({
    method: 'GET',
    url: route.url,
    schema: schemaOf(route, { params: route.params, querystring: query }, 200, route.answer),
    handler: async (request, reply) => {
      reply.header('cache-control', 'no-store');
      return asApiPrincipal(
        request,
        deps,
        (tx, principal) => {
          const req = {
            principal,
            params: checkedParams(route.params, request.params),
            query: checked(query, request.query),
            body: undefined,
            request,
          };
          return route.read(tx, req, reply);
        },
        'read',
      );
    },
  });
}

const ASKED_WITH: ReadonlySet<ProblemCode> = new Set(['held', 'version-stale']);

/** A refusal of what was sent, with what it would be asked; any other failure as it is. */
async function withQuestions(
  error: unknown,
  asked: () => Promise<readonly object[]> | undefined,
): Promise<unknown> {
  const refused = error instanceof InputFaults || (error instanceof Failure && ASKED_WITH.has(error.code));
  if (!refused) return error;
  try {
    const questions = (await asked()) ?? [];
    return questions.length === 0 ? error : new RefusedWith(error, questions);
  } catch (other) {
    // A build that is not the caller’s stays unseen: the refusal is told as if nothing was looked up.
    if (other instanceof Failure) return error;
    throw other;
  }
}

/** A JSON route that changes something: one transaction with its event, replayed for a known key. */
export function commandRoute<P extends z.ZodType, B extends z.ZodType, A extends z.ZodObject>(
  app: FastifyInstance,
  deps: Deps,
  route: Described & {
    readonly method: HTTPMethods;
    readonly url: string;
    readonly params: P;
    readonly body: B;
    readonly status: 200 | 201;
    readonly answer: A;
    /** Bytes of its body, where that may be more than usual: it is then read of nobody who is not known. */
    readonly bodyLimit?: number;
    /** Questions that go along with a refusal, of the body as it came. */
    asked?(tx: Tx, req: Given<z.output<P>, undefined, unknown>): Promise<readonly object[]>;
  } & (
      | { run(tx: Tx, req: Given<z.output<P>, undefined, z.output<B>>): Promise<Done<A>> }
      | {
          /**
           * What takes long is done before the transaction, for whoever is known by then, and holds up no lock; it gives
           * what is run in the transaction.
           */
          before(
            req: Given<z.output<P>, undefined, z.output<B>>,
          ): Promise<(tx: Tx, req: Given<z.output<P>, undefined, z.output<B>>) => Promise<Done<A>>>;
        }
    ),
): void {
  const { body } = route;
  const runOf = async (request: FastifyRequest) => {
    if ('run' in route) return route.run;
    const principal = await apiPrincipal(request, deps);
    const params = checkedParams(route.params, request.params);
    return route.before({
      principal,
      params,
      query: undefined,
      body: checked(body, request.body ?? {}),
      request,
    });
  };
  app.route({
    method: route.method,
    url: route.url,
    schema: schemaOf(
      route,
      { params: route.params, ...(Object.is(body, nothing) ? {} : { body }) },
      route.status,
      route.answer,
    ),
    ...largeBody(route.bodyLimit, (request) => apiPrincipal(request, deps)),
    handler: async (request, reply) => {
      const run = await runOf(request);
      const outcome = await asApiPrincipal(
        request,
        deps,
        async (tx, principal) => {
          const params = checkedParams(route.params, request.params);
          const sent = { principal, params, query: undefined, body: request.body, request };
          const command = {
            method: request.method,
            path: request.url.split('?')[0] ?? '',
            body: request.body,
            key: idempotencyKey(request.headers['idempotency-key']),
            whileRunning: 'refuse' as const,
          };
          try {
            const req = { ...sent, body: checked(body, request.body ?? {}) };
            noteBeforeStop(tx, req.body);
            return await runOnce(tx, principal, command, async () => ({
              status: route.status,
              ...(await deps.guard(tx, principal, () => run(tx, req))),
            }));
          } catch (error) {
            throw route.asked === undefined
              ? error
              : await withQuestions(error, () => route.asked?.(tx, sent));
          }
        },
        'write',
      );
      if (outcome.location !== undefined) reply.header('location', outcome.location);
      if (outcome.etag !== undefined) reply.header('etag', outcome.etag);
      return reply.code(outcome.status).header('cache-control', 'no-store').send(outcome.body);
    },
  });
}

export const idParams = z.strictObject({ id: z.uuid().meta({ description: 'id' }) });
export const noParams = nothing;
