import type { FastifyInstance } from 'fastify';
import { newLashLine } from '../../shared/schemas/lash-log.ts';
import type { Deps } from '../deps.ts';
import { commandRoute, idParams, noParams, readRoute } from '../http/api-route.ts';
import { keepLash, lashLogOf } from './lash-log.ts';
import { lashLineView, lashLogView, showLashLine, showLashLog } from './view.ts';

const url = '/api/v1/builds/:id/lash';
const tag = 'readings';

/** JSON routes of the lash log. */
export function lashLogApi(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'getLashLog',
    tag,
    summary: 'The lash log of each valve, how far its gap grew, and what that raises',
    url,
    params: idParams,
    query: noParams,
    answer: lashLogView,
    read: async (tx, { caller, params }) => showLashLog(await lashLogOf(tx, caller, params.id)),
  });
  commandRoute(app, deps, {
    operationId: 'keepLash',
    tag,
    summary:
      'Keep a lash as it was found or set: hot or cold, whether the nut had moved, the day and by whom',
    method: 'POST',
    url,
    params: idParams,
    body: newLashLine,
    status: 201,
    answer: lashLineView,
    run: async (tx, { caller, params, body }) => ({
      body: showLashLine(await keepLash(tx, caller, params.id, body)),
    }),
  });
}
