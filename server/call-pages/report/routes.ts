import type { FastifyInstance } from 'fastify';
import { callIdOf, loadContext } from '../../call/context.ts';
import { getCall } from '../../records/calls/calls.ts';
import type { Deps } from '../../web/deps.ts';
import { getPage, type PageSide, received } from '../../web/page-route.ts';
import { exportBuild } from '../export.ts';
import type { CallFrame } from '../frame.ts';
import { worksheetPage } from '../worksheet.ts';
import { loadWholeCall } from './load-whole-call.ts';
import { reportPage } from './report.ts';

/** What is taken away from a call: the report, a blank worksheet, and at the desk the whole record as JSON. */
export function reportRoutes(app: FastifyInstance, deps: Deps, frame: CallFrame, side: PageSide): void {
  const base = side === 'desk' ? '/calls/:callId' : '/bench';
  getPage(app, deps, {
    url: `${base}/report`,
    side,
    page: async (tx, req) => {
      const { computations } = deps;
      return reportPage(await loadWholeCall(frame, tx, req, computations), computations, deps.now());
    },
  });
  getPage(app, deps, {
    url: `${base}/worksheet`,
    side,
    page: async (tx, req) => worksheetPage(frame, await loadContext(tx, req)),
  });
  if (side === 'bench') return;
  app.get(`${base}/export.json`, { schema: { hide: true } }, async (request, reply) => {
    const req = await received(request, reply, deps, side);
    const { number, document } = await deps.db.shopTransaction(req.principal.shopId, async (tx) => {
      const call = await getCall(tx, req.principal, callIdOf(req));
      return {
        number: call.number,
        document: await exportBuild(tx, req.principal, call.buildId, deps.now()),
      };
    });
    return reply
      .type('application/json; charset=utf-8')
      .headers({
        'content-disposition': `attachment; filename="benchcall-call-${number}.json"`,
        'cache-control': 'no-store',
      })
      .send(JSON.stringify(document, null, 2));
  });
}
