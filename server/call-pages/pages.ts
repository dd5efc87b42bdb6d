import type { FastifyInstance } from 'fastify';
import type { Deps } from '../web/deps.ts';
import { getPage } from '../web/page-route.ts';
import type { CallFrame } from './frame.ts';
import { holdRoutes } from './hold-pages.ts';
import { photographPages } from './photographs/routes.ts';
import { loadWholeCall } from './report/load-whole-call.ts';
import { reportRoutes } from './report/routes.ts';
import { sharePages } from './sharing/routes.ts';
import { stepRoutes } from './step-routes.ts';
import { takeoverPage } from './takeover/takeover.ts';
import { unitsRoute } from './units-form.ts';

/** The pages of calls, at the desk and at the bench, out of the list of steps. */
export function callPages(app: FastifyInstance, deps: Deps, frame: CallFrame): void {
  for (const side of ['desk', 'bench'] as const) {
    stepRoutes(app, deps, frame, side);
    holdRoutes(app, deps, frame, side);
    unitsRoute(app, deps, frame, side);
    reportRoutes(app, deps, frame, side);
  }
  getPage(app, deps, {
    url: '/calls/:callId/takeover',
    side: 'desk',
    page: async (tx, req) => takeoverPage(await loadWholeCall(frame, tx, req, deps.computations)),
  });
  photographPages(app, deps, frame);
  sharePages(app, deps, frame);
}
