import type { FastifyInstance } from 'fastify';
import type { Deps } from '../deps.ts';
import { deskRoutes } from './pages/desk-routes.ts';
import { stepRoutes } from './pages/step-routes.ts';

/** The pages of calls, at the desk and at the bench. */
export function callPages(app: FastifyInstance, deps: Deps): void {
  deskRoutes(app, deps);
  stepRoutes(app, deps, 'desk');
  stepRoutes(app, deps, 'bench');
}
