import type { FastifyInstance } from 'fastify';
import type { Deps } from '../web/deps.ts';
import { deskRoutes } from './desk-routes.ts';
import { reportRoutes } from './report/routes.ts';
import { stepRoutes } from './step-routes.ts';

/** The pages of calls, at the desk and at the bench. */
export function callPages(app: FastifyInstance, deps: Deps): void {
  deskRoutes(app, deps);
  for (const side of ['desk', 'bench'] as const) {
    stepRoutes(app, deps, side);
    reportRoutes(app, deps, side);
  }
}
