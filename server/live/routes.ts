import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Caller } from '../access/caller.ts';
import { isId } from '../access/secrets.ts';
import { getCall } from '../calls/calls.ts';
import type { Deps } from '../deps.ts';
import { apiCaller, pageCaller } from '../http/callers.ts';
import { Failure } from '../problems/failure.ts';
import { stream } from './stream.ts';

function stepOf(request: FastifyRequest): string {
  const step: unknown =
    typeof request.query === 'object' && request.query !== null
      ? Reflect.get(request.query, 'step')
      : undefined;
  return typeof step === 'string' && /^[a-z-]{1,40}$/.test(step) ? step : '';
}

function idOf(request: FastifyRequest): string {
  const id: unknown =
    typeof request.params === 'object' && request.params !== null
      ? Reflect.get(request.params, 'id')
      : undefined;
  if (typeof id !== 'string' || !isId(id)) throw new Failure('not-found', 'nothing is here');
  return id;
}

async function signedIn(caller: Promise<Caller | undefined>): Promise<Caller> {
  const known = await caller;
  if (known === undefined) throw new Failure('sign-in-required', 'sign in first');
  return known;
}

/** A secret that has ended speaks for nobody; a database that is away says nothing about it. */
function gone(error: unknown): undefined {
  if (error instanceof Failure && error.code === 'sign-in-required') return undefined;
  throw error;
}

/** Live streams: of a call for the desk, of the link's build for the builder, of a build for a program. */
export function liveRoutes(app: FastifyInstance, deps: Deps): void {
  const hidden = { schema: { hide: true } };
  const unfinished = new Set<Promise<unknown>>();
  const later = (work: Promise<unknown>) => {
    const done = work.catch(() => undefined).finally(() => unfinished.delete(done));
    unfinished.add(done);
  };
  // An open stream would keep the process from ending; who leaves is still written down.
  app.addHook('preClose', async () => {
    deps.hub.drain();
    await Promise.all(unfinished);
  });
  app.get('/live/calls/:id', hidden, async (request: FastifyRequest, reply: FastifyReply) => {
    const caller = await signedIn(pageCaller(request, deps, 'desk'));
    const call = await deps.db.inShop(caller.shopId, (tx) => getCall(tx, caller, idOf(request)));
    await stream(deps, request, reply, caller, {
      buildId: call.buildId,
      step: stepOf(request),
      still: () => pageCaller(request, deps, 'desk'),
      later,
    });
  });
  app.get('/live/bench', hidden, async (request, reply) => {
    const caller = await signedIn(pageCaller(request, deps, 'bench'));
    if (caller.kind !== 'builder') throw new Failure('not-found', 'nothing is here');
    await stream(deps, request, reply, caller, {
      buildId: caller.buildId,
      step: stepOf(request),
      still: () => pageCaller(request, deps, 'bench'),
      later,
    });
  });
  app.get('/api/v1/builds/:id/live', hidden, async (request, reply) => {
    const caller = await apiCaller(request, deps);
    await stream(deps, request, reply, caller, {
      buildId: idOf(request),
      step: '',
      still: () => apiCaller(request, deps).catch(gone),
      later,
    });
  });
}
