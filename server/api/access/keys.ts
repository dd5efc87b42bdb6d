import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { apiKeyView, listApiKeys, makeApiKey, newKey, revokeApiKey } from '../../auth/api-keys.ts';
import { commandRoute, noParams, readRoute } from '../../web/api-route.ts';
import { shownOnce } from '../../web/api-schemas.ts';
import type { Deps } from '../../web/deps.ts';

const keysView = z.object({ keys: z.array(apiKeyView) });
const madeKeyView = z.object({ key: apiKeyView, secret: shownOnce });
const revokedView = z.object({ revoked: z.uuid() });

/** Keys that programs of the shop speak with. */
export function keyRoutes(app: FastifyInstance, deps: Deps): void {
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
