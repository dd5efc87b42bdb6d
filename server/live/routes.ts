import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { memberOf } from '../../shared/member.ts';
import type { Principal } from '../auth/principal.ts';
import { isId } from '../auth/secrets.ts';
import { Failure } from '../problems/failure.ts';
import { getCall } from '../records/calls/calls.ts';
import type { Deps } from '../web/deps.ts';
import { apiPrincipal, pagePrincipal } from '../web/principals.ts';
import { stream } from './stream.ts';

function stepOf(request: FastifyRequest): string {
  const step = memberOf(request.query, 'step');
  return typeof step === 'string' && /^[a-z-]{1,40}$/.test(step) ? step : '';
}

function idOf(request: FastifyRequest): string {
  const id = memberOf(request.params, 'id');
  if (typeof id !== 'string' || !isId(id)) throw new Failure('not-found', 'nothing is here');
  return id;
}

async function signedIn(principal: Promise<Principal | undefined>): Promise<Principal> {
  const known = await principal;
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
    const principal = await signedIn(pagePrincipal(request, deps, 'desk'));
    const call = await deps.db.shopTransaction(principal.shopId, (tx) =>
      getCall(tx, principal, idOf(request)),
    );
    await stream(deps, request, reply, principal, {
      buildId: call.buildId,
      step: stepOf(request),
      still: () => pagePrincipal(request, deps, 'desk'),
      later,
    });
  });
  app.get('/live/bench', hidden, async (request, reply) => {
    const principal = await signedIn(pagePrincipal(request, deps, 'bench'));
    if (principal.kind !== 'builder') throw new Failure('not-found', 'nothing is here');
    await stream(deps, request, reply, principal, {
      buildId: principal.buildId,
      step: stepOf(request),
      still: () => pagePrincipal(request, deps, 'bench'),
      later,
    });
  });
  app.get('/api/v1/builds/:id/live', hidden, async (request, reply) => {
    const principal = await apiPrincipal(request, deps);
    await stream(deps, request, reply, principal, {
      buildId: idOf(request),
      step: '',
      still: () => apiPrincipal(request, deps).catch(gone),
      later,
    });
  });
}
