import type { FastifyInstance } from 'fastify';
import { newLashLine } from '../../shared/schemas/lash-log.ts';
import { assessedAs } from '../assessment/assessed.ts';
import { lashLogView, showLashLog } from '../assessment/lash/view.ts';
import { refuseTurning } from '../assessment/stops/refuse-turning.ts';
import { keepLash } from '../records/lash-log/lash-log.ts';
import { lashLineView, showLashLine } from '../records/lash-log/view.ts';
import { readBuildRecord } from '../records/whole-build/load-build.ts';
import { commandRoute, idParams, noParams, readRoute } from '../web/api-route.ts';
import type { Deps } from '../web/deps.ts';

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
    read: async (tx, { principal, params }) => {
      const record = await readBuildRecord(tx, principal, { buildId: params.id });
      return showLashLog(record, assessedAs(principal, record));
    },
  });
  commandRoute(app, deps, {
    operationId: 'keepLash',
    tag,
    summary:
      'Keep a lash as it was found or set: hot or cold, whether the adjuster had moved, the day and by whom',
    method: 'POST',
    url,
    params: idParams,
    body: newLashLine,
    status: 201,
    answer: lashLineView,
    run: async (tx, { principal, params, body }) => ({
      body: showLashLine(await keepLash(tx, principal, params.id, body, refuseTurning, deps.now())),
    }),
  });
}
