import type { FastifyInstance } from 'fastify';
import { revokeApiKey } from '../../auth/api-keys.ts';
import type { Tx } from '../../database/database.ts';
import type { Deps } from '../../web/deps.ts';
import { postForm } from '../../web/form-route.ts';
import { type FormState, FRESH } from '../../web/forms/fields.ts';
import type { PageRequest } from '../../web/page-request.ts';
import { getPage } from '../../web/page-route.ts';
import { deskPage } from './desk-page.ts';
import { keyRoute } from './key-route.ts';
import { peopleRoutes } from './people-routes.ts';
import { securityPages } from './security-page.ts';

/** The administrator's page: people and keys. */
export function deskPages(app: FastifyInstance, deps: Deps): void {
  const route = {
    url: '/desk',
    side: 'desk' as const,
    page: (tx: Tx, req: PageRequest, rejected?: FormState) => deskPage(tx, req, rejected ?? FRESH),
  };
  getPage(app, deps, route);
  keyRoute(app, deps);
  securityPages(app, deps);
  peopleRoutes(app, deps);
  postForm(app, deps, {
    ...route,
    action: '/desk/keys/revoke',
    run: async (tx, { principal, fields }) => {
      await revokeApiKey(tx, principal, fields['key-id'] ?? '', deps.now());
      return { goTo: '/desk' };
    },
  });
}
