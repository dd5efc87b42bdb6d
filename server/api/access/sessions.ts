import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { someWords } from '../../../shared/schemas/texts.ts';
import { requireStaff } from '../../auth/principal.ts';
import {
  endOtherSessions,
  endOwnSession,
  listOwnSessions,
  ownSessionView,
  showOwnSession,
} from '../../auth/sessions.ts';
import { endSessions, signIn } from '../../auth/sign-in.ts';
import { commandRoute, noParams, readRoute } from '../../web/api-route.ts';
import { problemResponses } from '../../web/api-schemas.ts';
import type { Deps } from '../../web/deps.ts';
import { apiPrincipal } from '../../web/principals.ts';
import { checked } from '../../web/validate.ts';

const signedInView = z.object({ token: z.string(), expiresAt: z.iso.datetime(), name: z.string() });
const meView = z.object({
  kind: z.string(),
  id: z.uuid(),
  name: z.string(),
  shopId: z.uuid(),
  buildId: z.uuid().optional(),
});
const ownSessionsView = z.object({ sessions: z.array(ownSessionView) });
const endedView = z.object({ ended: z.uuid() });
const othersEndedView = z.object({ ended: z.int().meta({ description: 'how many' }) });

const credentials = z.strictObject({
  email: someWords('e-mail address of a person of the desk', 320),
  password: someWords('their password', 1000),
});

/** Signing in and out. */
export function sessionRoutes(app: FastifyInstance, deps: Deps): void {
  app.post(
    '/api/v1/sessions',
    {
      schema: {
        operationId: 'signIn',
        tags: ['access'],
        security: [],
        summary: 'Sign in with e-mail and password; the token goes into Authorization: Bearer',
        body: credentials,
        response: {
          201: signedInView,
          ...problemResponses,
        },
      },
    },
    async (request, reply) => {
      const signed = await signIn(
        deps.db,
        deps.signInLimits,
        { ...checked(credentials, request.body ?? {}), address: request.ip },
        deps.now(),
      );
      return reply
        .code(201)
        .header('cache-control', 'no-store')
        .send(
          answer(signedInView, {
            token: signed.secret,
            expiresAt: signed.expiresAt.toISOString(),
            name: signed.name,
          }),
        );
    },
  );
  app.delete(
    '/api/v1/sessions/current',
    {
      schema: {
        operationId: 'signOut',
        tags: ['access'],
        summary: 'End this session',
        security: [{ bearer: [] }],
        response: { 204: z.null(), ...problemResponses },
      },
    },
    async (request, reply) => {
      const staff = requireStaff(await apiPrincipal(request, deps));
      await endSessions(deps.db, staff.shopId, { sessionId: staff.sessionId }, deps.now());
      return reply.code(204).send();
    },
  );
}

/** Who one is. */
export function principalRoute(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'whoAmI',
    tag: 'access',
    summary: 'Whom this bearer speaks for',
    url: '/api/v1/me',
    params: noParams,
    query: noParams,
    answer: meView,
    read: async (_tx, { principal }) =>
      answer(meView, {
        kind: principal.kind,
        id: principal.id,
        name: principal.name,
        shopId: principal.shopId,
        buildId: principal.kind === 'builder' ? principal.buildId : undefined,
      }),
  });
}

/** Where one is signed in, and ending what was left open elsewhere. */
export function ownSessionRoutes(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'listOwnSessions',
    tag: 'access',
    summary: 'Where you are signed in, the one used last first',
    url: '/api/v1/me/sessions',
    params: noParams,
    query: noParams,
    answer: ownSessionsView,
    read: async (tx, { principal }) =>
      answer(ownSessionsView, {
        sessions: (await listOwnSessions(tx, principal, deps.now())).map(showOwnSession),
      }),
  });
  commandRoute(app, deps, {
    operationId: 'endOwnSession',
    tag: 'access',
    summary: 'End one of your sessions',
    method: 'DELETE',
    url: '/api/v1/me/sessions/:id',
    params: z.strictObject({ id: z.uuid() }),
    body: noParams,
    status: 200,
    answer: endedView,
    run: async (tx, { principal, params }) => {
      await endOwnSession(tx, principal, params.id, deps.now());
      return { body: answer(endedView, { ended: params.id }) };
    },
  });
  commandRoute(app, deps, {
    operationId: 'endOtherSessions',
    tag: 'access',
    summary: 'End every session of yours but this one',
    method: 'POST',
    url: '/api/v1/me/sessions/end-others',
    params: noParams,
    body: noParams,
    status: 200,
    answer: othersEndedView,
    run: async (tx, { principal }) => ({
      body: answer(othersEndedView, { ended: await endOtherSessions(tx, principal, deps.now()) }),
    }),
  });
}
