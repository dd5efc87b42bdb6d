import type { FastifyInstance } from 'fastify';
import type { Deps } from '../deps.ts';
import { firstAdministratorRoutes } from './pages/first-page.ts';
import { openingRoutes } from './pages/opening-page.ts';
import { signInRoutes } from './pages/sign-in-page.ts';

/** Signing in and out, opening a share link, and the first administrator. */
export function accessPages(app: FastifyInstance, deps: Deps): void {
  signInRoutes(app, deps);
  openingRoutes(app, deps);
  firstAdministratorRoutes(app, deps);
}
