import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { closeCall as closing, openCall } from '../../shared/schemas/commands.ts';
import { words } from '../../shared/schemas/texts.ts';
import { callView, listedCallView, showCall, showListedCall } from '../api/views.ts';
import type { Deps } from '../deps.ts';
import { commandRoute, idParams, noParams, readRoute } from '../http/api-route.ts';
import { getCall } from './calls.ts';
import { closeCall } from './change-call.ts';
import { listCalls } from './list-calls.ts';
import { startCall } from './open-call.ts';

const listQuery = z.strictObject({
  search: words('words in caller, build or goal, or a call number').optional(),
  before: z.coerce
    .number()
    .int()
    .min(1)
    .max(2_147_483_647)
    .optional()
    .meta({ description: 'only calls with a smaller number' }),
  limit: z.coerce.number().int().min(1).max(200).default(50).meta({ description: 'how many at the most' }),
});

/** JSON routes of calls: listing, opening and closing. */
export function callsApi(app: FastifyInstance, deps: Deps): void {
  const tag = 'calls';
  readRoute(app, deps, {
    operationId: 'listCalls',
    tag,
    summary: 'Calls of the shop, newest first',
    url: '/api/v1/calls',
    params: noParams,
    query: listQuery,
    answer: z.object({ calls: z.array(listedCallView), next: z.int().optional() }),
    read: async (tx, { caller, query }) => {
      const found = await listCalls(tx, caller, query);
      const last = found.length === query.limit ? found.at(-1) : undefined;
      return { calls: found.map(showListedCall), ...(last === undefined ? {} : { next: last.number }) };
    },
  });
  commandRoute(app, deps, {
    operationId: 'openCall',
    tag,
    summary: 'Open a call, on a new build or a known one',
    method: 'POST',
    url: '/api/v1/calls',
    params: noParams,
    body: openCall,
    status: 201,
    answer: callView,
    run: async (tx, { caller, body }) => {
      const call = await startCall(tx, caller, body);
      return { body: showCall(call), location: `/api/v1/calls/${call.id}` };
    },
  });
  readRoute(app, deps, {
    operationId: 'getCall',
    tag,
    summary: 'One call',
    url: '/api/v1/calls/:id',
    params: idParams,
    query: noParams,
    answer: callView,
    read: async (tx, { caller, params }) => showCall(await getCall(tx, caller, params.id)),
  });
  commandRoute(app, deps, {
    operationId: 'closeCall',
    tag,
    summary: 'Close a call with its outcome',
    method: 'POST',
    url: '/api/v1/calls/:id/close',
    params: idParams,
    body: closing,
    status: 200,
    answer: callView,
    run: async (tx, { caller, params, body }) => ({
      body: showCall(await closeCall(tx, caller, params.id, body.outcome)),
    }),
  });
}
