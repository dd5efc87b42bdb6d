import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { InputFaults } from '../../shared/problems/faults.ts';
import { someWords } from '../../shared/schemas/texts.ts';
import { apiKeyView, listApiKeys, makeApiKey, newKey, revokeApiKey } from '../auth/api-keys.ts';
import { passwordFault } from '../auth/password-rules.ts';
import { requireStaff } from '../auth/principal.ts';
import { endSessions, signIn } from '../auth/sign-in.ts';
import { addStaff, disableStaff, listStaff, newStaff, staffView } from '../auth/staff.ts';
import { commandRoute, noParams, readRoute } from '../web/api-route.ts';
import { problemResponses, shownOnce } from '../web/api-schemas.ts';
import type { Deps } from '../web/deps.ts';
import { apiPrincipal } from '../web/principals.ts';
import { checked } from '../web/validate.ts';

const credentials = z.strictObject({
  email: someWords('e-mail address of a person of the desk', 320),
  password: someWords('their password', 1000),
});

/** Signing in by JSON, and who one is. */
export function accessApi(app: FastifyInstance, deps: Deps): void {
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
          201: z.object({ token: z.string(), expiresAt: z.iso.datetime(), name: z.string() }),
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
        .send({ token: signed.secret, expiresAt: signed.expiresAt.toISOString(), name: signed.name });
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
  readRoute(app, deps, {
    operationId: 'whoAmI',
    tag: 'access',
    summary: 'Whom this bearer speaks for',
    url: '/api/v1/me',
    params: noParams,
    query: noParams,
    answer: z.object({
      kind: z.string(),
      id: z.uuid(),
      name: z.string(),
      shopId: z.uuid(),
      buildId: z.uuid().optional(),
    }),
    read: async (_tx, { principal }) => ({
      kind: principal.kind,
      id: principal.id,
      name: principal.name,
      shopId: principal.shopId,
      ...(principal.kind === 'builder' ? { buildId: principal.buildId } : {}),
    }),
  });
  readRoute(app, deps, {
    operationId: 'listKeys',
    tag: 'access',
    summary: 'API keys of the shop, without their secrets',
    url: '/api/v1/keys',
    params: noParams,
    query: noParams,
    answer: z.object({ keys: z.array(apiKeyView) }),
    read: async (tx, { principal }) => ({ keys: await listApiKeys(tx, principal) }),
  });
  commandRoute(app, deps, {
    operationId: 'makeKey',
    tag: 'access',
    summary: 'Make an API key; its secret is shown this once',
    method: 'POST',
    url: '/api/v1/keys',
    params: noParams,
    body: newKey,
    status: 201,
    answer: z.object({ key: apiKeyView, secret: shownOnce }),
    run: async (tx, { principal, body }) => {
      const { key, secret } = await makeApiKey(tx, principal, body, deps.now());
      return { body: { key }, once: { secret } };
    },
  });
  commandRoute(app, deps, {
    operationId: 'revokeKey',
    tag: 'access',
    summary: 'Revoke an API key at once',
    method: 'DELETE',
    url: '/api/v1/keys/:id',
    params: z.strictObject({ id: z.uuid() }),
    body: noParams,
    status: 200,
    answer: z.object({ revoked: z.uuid() }),
    run: async (tx, { principal, params }) => {
      await revokeApiKey(tx, principal, params.id, deps.now());
      return { body: { revoked: params.id } };
    },
  });
  readRoute(app, deps, {
    operationId: 'listStaff',
    tag: 'access',
    summary: 'People of the desk',
    url: '/api/v1/staff',
    params: noParams,
    query: noParams,
    answer: z.object({ staff: z.array(staffView) }),
    read: async (tx, { principal }) => ({ staff: await listStaff(tx, principal) }),
  });
  commandRoute(app, deps, {
    operationId: 'addStaff',
    tag: 'access',
    summary: 'Add a person to the desk',
    method: 'POST',
    url: '/api/v1/staff',
    params: noParams,
    body: newStaff,
    status: 201,
    answer: staffView,
    run: async (tx, { principal, body }) => {
      const weak = passwordFault(body.password, [body.email, body.name]);
      if (weak.length > 0) {
        throw new InputFaults(
          weak.map(({ detail }) => ({ pointer: '/password', code: 'not-allowed', detail })),
        );
      }
      return { body: await addStaff(tx, principal, body) };
    },
  });
  commandRoute(app, deps, {
    operationId: 'disableStaff',
    tag: 'access',
    summary: 'Take a person off the desk and end their sessions',
    method: 'POST',
    url: '/api/v1/staff/:id/disable',
    params: z.strictObject({ id: z.uuid() }),
    body: noParams,
    status: 200,
    answer: z.object({ disabled: z.uuid() }),
    run: async (tx, { principal, params }) => {
      await disableStaff(tx, principal, params.id, deps.now());
      return { body: { disabled: params.id } };
    },
  });
}
