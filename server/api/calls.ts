import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import { closeCall as closing, openCall } from '../../shared/schemas/commands.ts';
import { words } from '../../shared/schemas/texts.ts';
import {
  judgedCallView,
  listedCallView,
  showCallAfter,
  showCallOf,
  showListedCall,
} from '../assessment/calls/view.ts';
import { assessmentsOf } from '../assessment/of-calls.ts';
import { closeCall } from '../records/calls/change-call.ts';
import { listCalls } from '../records/calls/list-calls.ts';
import { startCall } from '../records/calls/open-call.ts';
import { readBuildRecord } from '../records/whole-build/load-build.ts';
import { commandRoute, idParams, noParams, readRoute } from '../web/api-route.ts';
import type { Deps } from '../web/deps.ts';

const callsView = z.object({ calls: z.array(listedCallView), next: z.int().optional() });

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
    answer: callsView,
    read: async (tx, { principal, query }) => {
      const found = await listCalls(tx, principal, query);
      const last = found.length === query.limit ? found.at(-1) : undefined;
      const said = await assessmentsOf(
        tx,
        principal,
        found.filter(({ mayBeStopped }) => mayBeStopped),
      );
      const calls = found.map((call) => showListedCall(call, said.get(call.id)?.stop ?? []));
      return answer(callsView, { calls, next: last?.number });
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
    answer: judgedCallView,
    run: async (tx, { principal, body }) => {
      const call = await startCall(tx, principal, body);
      return { body: await showCallAfter(tx, principal, call), location: `/api/v1/calls/${call.id}` };
    },
  });
  readRoute(app, deps, {
    operationId: 'getCall',
    tag,
    summary: 'One call',
    url: '/api/v1/calls/:id',
    params: idParams,
    query: noParams,
    answer: judgedCallView,
    read: async (tx, { principal, params }) =>
      showCallOf(await readBuildRecord(tx, principal, { callId: params.id }), params.id),
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
    answer: judgedCallView,
    run: async (tx, { principal, params, body }) => ({
      body: await showCallAfter(tx, principal, await closeCall(tx, principal, params.id, body.outcome)),
    }),
  });
}
