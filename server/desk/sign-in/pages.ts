import type { FastifyInstance } from 'fastify';
import type { Deps } from '../../web/deps.ts';
import { firstAdministratorRoutes } from './first-page.ts';
import { openingRoutes } from './opening-page.ts';
import { passwordRoutes } from './password-page.ts';
import { signInRoutes } from './sign-in-page.ts';

/** Signing in and out, opening a share link, the first administrator, and links that set a password. */
export function accessPages(app: FastifyInstance, deps: Deps): void {
  signInRoutes(app, deps);
  openingRoutes(app, deps);
  firstAdministratorRoutes(app, deps);
  passwordRoutes(app, deps);
}
