import type { FastifyInstance } from 'fastify';
import { revokeApiKey } from '../../auth/api-keys.ts';
import { passwordFault } from '../../auth/password-rules.ts';
import { addStaff, disableStaff, firstPasswordHash, newStaff } from '../../auth/staff.ts';
import type { Tx } from '../../database/database.ts';
import type { Deps } from '../../web/deps.ts';
import { postForm } from '../../web/form-route.ts';
import { type FormState, FRESH } from '../../web/forms/fields.ts';
import { readForm } from '../../web/forms/read-form.ts';
import type { PageRequest } from '../../web/page-request.ts';
import { getPage } from '../../web/page-route.ts';
import { deskPage } from './desk-page.ts';
import { keyRoute } from './key-route.ts';
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
  postForm(app, deps, {
    ...route,
    action: '/desk/staff',
    before: async ({ principal, fields }) => {
      const { key: _, ...typed } = fields;
      const { password: __, ...kept } = typed;
      const read = readForm(newStaff, typed, { lengths: 'in' });
      if (!read.ok) return async () => ({ faults: read.faults, typed: kept });
      const weak = passwordFault(read.data.password, [read.data.email, read.data.name]);
      if (weak.length > 0) return async () => ({ faults: weak, typed: kept });
      const hash = await firstPasswordHash(principal, read.data.password);
      return async (tx) => {
        await addStaff(tx, principal, read.data, hash);
        return { goTo: '/desk' };
      };
    },
  });
  postForm(app, deps, {
    ...route,
    action: '/desk/staff/leave',
    run: async (tx, { principal, fields }) => {
      await disableStaff(tx, principal, fields.person ?? '', deps.now());
      return { goTo: '/desk' };
    },
  });
  postForm(app, deps, {
    ...route,
    action: '/desk/keys/revoke',
    run: async (tx, { principal, fields }) => {
      await revokeApiKey(tx, principal, fields['key-id'] ?? '', deps.now());
      return { goTo: '/desk' };
    },
  });
}
