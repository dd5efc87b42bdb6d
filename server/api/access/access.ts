import type { FastifyInstance } from 'fastify';
import type { Deps } from '../../web/deps.ts';
import { keyRoutes } from './keys.ts';
import { securityRoute } from './security.ts';
import { ownSessionRoutes, principalRoute, sessionRoutes } from './sessions.ts';
import { passwordLinkRoutes, staffRoutes } from './staff.ts';

/** JSON routes of who may do what: sessions, keys, people of the desk. */
export function accessApi(app: FastifyInstance, deps: Deps): void {
  sessionRoutes(app, deps);
  principalRoute(app, deps);
  ownSessionRoutes(app, deps);
  keyRoutes(app, deps);
  staffRoutes(app, deps);
  passwordLinkRoutes(app, deps);
  securityRoute(app, deps);
}
