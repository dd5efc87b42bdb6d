import type { FastifyInstance } from 'fastify';
import { callIdOf, loadContext } from '../../call/context.ts';
import { callOf } from '../../records/whole-build/build-record.ts';
import { exportBuild, exportView, FOR_EXPORT } from '../../records/whole-build/export.ts';
import { readBuildRecord } from '../../records/whole-build/load-build.ts';
import type { Deps } from '../../web/deps.ts';
import { originOf } from '../../web/http/origin.ts';
import { type PageRequest, type PageSide, receive } from '../../web/page-request.ts';
import { getPage } from '../../web/page-route.ts';
import type { DeskReached } from '../desk-reached.ts';
import type { CallFrame } from '../frame.ts';
import { worksheetPage } from '../worksheet.ts';
import { loadWholeCall } from './load-whole-call.ts';
import { reportPage } from './report.ts';

/** How the desk is reached from a sheet of paper. */
const deskOf = (deps: Deps, req: PageRequest): DeskReached => ({
  phone: deps.config.DESK_PHONE,
  origin: originOf(deps, req.request),
});

/** What is taken away from a call: the report, a blank worksheet, and at the desk the whole record as JSON. */
export function reportRoutes(app: FastifyInstance, deps: Deps, frame: CallFrame, side: PageSide): void {
  const base = side === 'desk' ? '/calls/:callId' : '/bench';
  getPage(app, deps, {
    url: `${base}/report`,
    side,
    page: async (tx, req) => {
      const { computations } = deps;
      return reportPage(await loadWholeCall(frame, tx, req, computations), computations, {
        now: deps.now(),
        desk: deskOf(deps, req),
        frontOnly: req.query.pages === 'front',
      });
    },
  });
  getPage(app, deps, {
    url: `${base}/worksheet`,
    side,
    page: async (tx, req) => worksheetPage(frame, await loadContext(tx, req), deskOf(deps, req)),
  });
  if (side === 'bench') return;
  const exported = { schema: { hide: true, response: { 200: exportView } } };
  app.get(`${base}/export.json`, exported, async (request, reply) => {
    const { record, number } = await receive(
      request,
      reply,
      deps,
      side,
      async (tx, req) => {
        const callId = callIdOf(req);
        const record = await readBuildRecord(tx, req.principal, { callId }, FOR_EXPORT);
        return { record, number: callOf(record, callId).number };
      },
      'read',
    );
    return reply
      .type('application/json; charset=utf-8')
      .headers({
        'content-disposition': `attachment; filename="benchcall-call-${number}.json"`,
        'cache-control': 'no-store',
      })
      .send(JSON.stringify(exportBuild(record, deps.now()), null, 2));
  });
}
