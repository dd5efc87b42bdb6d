import type { FastifyInstance } from 'fastify';
import type { Deps } from '../../deps.ts';
import { getPage, type PageSide, received } from '../../http/page-route.ts';
import { exportBuild } from '../../record/export.ts';
import { getCall } from '../calls.ts';
import { callIdOf, lookAt } from '../pages/sight.ts';
import { reportPage } from './report.ts';
import { lookAtWhole } from './whole.ts';
import { worksheetPage } from './worksheet.ts';

/** What is taken away from a call: the report, a blank worksheet, and at the desk the whole record as JSON. */
export function reportRoutes(app: FastifyInstance, deps: Deps, side: PageSide): void {
  const base = side === 'desk' ? '/calls/:callId' : '/bench';
  getPage(app, deps, {
    url: `${base}/report`,
    side,
    page: async (tx, given) => reportPage(await lookAtWhole(tx, given, deps.computations), deps.now()),
  });
  getPage(app, deps, {
    url: `${base}/worksheet`,
    side,
    page: async (tx, given) => worksheetPage(await lookAt(tx, given)),
  });
  if (side === 'bench') return;
  app.get(`${base}/export.json`, { schema: { hide: true } }, async (request, reply) => {
    const given = await received(request, reply, deps, side);
    const { number, document } = await deps.db.inShop(given.caller.shopId, async (tx) => {
      const call = await getCall(tx, given.caller, callIdOf(given));
      return { number: call.number, document: await exportBuild(tx, given.caller, call.buildId, deps.now()) };
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
