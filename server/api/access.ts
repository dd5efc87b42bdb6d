import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { InputFaults } from '../../shared/problems/faults.ts';
import { answer } from '../../shared/schemas/answer.ts';
import { someWords } from '../../shared/schemas/texts.ts';
import { apiKeyView, listApiKeys, makeApiKey, newKey, revokeApiKey } from '../auth/api-keys.ts';
import { passwordFault } from '../auth/password-rules.ts';
import { requireStaff } from '../auth/principal.ts';
import {
  listSecurityEvents,
  SECURITY_DAYS,
  securityEventView,
  showSecurityEvent,
} from '../auth/security-events.ts';
import { endSessions, signIn } from '../auth/sign-in.ts';
import {
  addStaff,
  disableStaff,
  firstPasswordHash,
  listStaff,
  newStaff,
  showStaff,
  staffView,
} from '../auth/staff.ts';
import { commandRoute, noParams, readRoute } from '../web/api-route.ts';
import { problemResponses, shownOnce } from '../web/api-schemas.ts';
import type { Deps } from '../web/deps.ts';
import { apiPrincipal } from '../web/principals.ts';
import { checked } from '../web/validate.ts';

const signedInView = z.object({ token: z.string(), expiresAt: z.iso.datetime(), name: z.string() });
const meView = z.object({
  kind: z.string(),
  id: z.uuid(),
  name: z.string(),
  shopId: z.uuid(),
  buildId: z.uuid().optional(),
});
const keysView = z.object({ keys: z.array(apiKeyView) });
const madeKeyView = z.object({ key: apiKeyView, secret: shownOnce });
const revokedView = z.object({ revoked: z.uuid() });
const staffListView = z.object({ staff: z.array(staffView) });
const disabledView = z.object({ disabled: z.uuid() });

const credentials = z.strictObject({
  email: someWords('e-mail address of a person of the desk', 320),
  password: someWords('their password', 1000),
});

/** Signing in and out, and who one is. */
function sessionRoutes(app: FastifyInstance, deps: Deps): void {
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

function principalRoute(app: FastifyInstance, deps: Deps): void {
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

/** Keys that programs of the shop speak with. */
function keyRoutes(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'listKeys',
    tag: 'access',
    summary: 'API keys of the shop, without their secrets',
    url: '/api/v1/keys',
    params: noParams,
    query: noParams,
    answer: keysView,
    read: async (tx, { principal }) => answer(keysView, { keys: await listApiKeys(tx, principal) }),
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
    answer: madeKeyView,
    run: async (tx, { principal, body }) => {
      const { key, secret } = await makeApiKey(tx, principal, body, deps.now());
      return { body: answer(madeKeyView, { key, secret: undefined }), once: { secret } };
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
    answer: revokedView,
    run: async (tx, { principal, params }) => {
      await revokeApiKey(tx, principal, params.id, deps.now());
      return { body: answer(revokedView, { revoked: params.id }) };
    },
  });
}

/** People of the desk. */
function staffRoutes(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'listStaff',
    tag: 'access',
    summary: 'People of the desk',
    url: '/api/v1/staff',
    params: noParams,
    query: noParams,
    answer: staffListView,
    read: async (tx, { principal }) => answer(staffListView, { staff: await listStaff(tx, principal) }),
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
    before: async ({ principal, body }) => {
      const weak = passwordFault(body.password, [body.email, body.name]);
      if (weak.length > 0) {
        throw new InputFaults(
          weak.map(({ detail }) => ({ pointer: '/password', code: 'not-allowed', detail })),
        );
      }
      const hash = await firstPasswordHash(principal, body.password);
      return async (tx) => ({ body: showStaff(await addStaff(tx, principal, body, hash)) });
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
    answer: disabledView,
    run: async (tx, { principal, params }) => {
      await disableStaff(tx, principal, params.id, deps.now());
      return { body: answer(disabledView, { disabled: params.id }) };
    },
  });
}

const eventsView = z.object({ events: z.array(securityEventView), next: z.uuid().optional() });

const eventsQuery = z.strictObject({
  after: z.uuid().optional().meta({ description: 'next of the page before' }),
  limit: z.coerce.number().int().min(1).max(200).default(50),
});

/** What happened to the ways in. */
function securityRoute(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'listSecurityEvents',
    tag: 'access',
    summary: `Sign-ins, passwords, keys and links of the shop, the newest first; kept for ${SECURITY_DAYS} days`,
    url: '/api/v1/security-events',
    params: noParams,
    query: eventsQuery,
    answer: eventsView,
    read: async (tx, { principal, query }) => {
      const found = await listSecurityEvents(tx, principal, { ...query, limit: query.limit + 1 });
      const events = found.slice(0, query.limit);
      return answer(eventsView, {
        events: events.map(showSecurityEvent),
        next: found.length > events.length ? events.at(-1)?.id : undefined,
      });
    },
  });
}

/** JSON routes of who may do what: sessions, keys, people of the desk. */
export function accessApi(app: FastifyInstance, deps: Deps): void {
  sessionRoutes(app, deps);
  principalRoute(app, deps);
  keyRoutes(app, deps);
  staffRoutes(app, deps);
  securityRoute(app, deps);
}
