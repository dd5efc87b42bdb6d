import type { FastifyInstance } from 'fastify';
import type { Tx } from '../database/database.ts';
import type { Deps } from '../deps.ts';
import { FRESH, type Shown } from '../forms/fields.ts';
import { readForm } from '../forms/read-form.ts';
import { getPage, type PageRequest, postForm } from '../http/page-route.ts';
import { revokeApiKey } from './api-keys.ts';
import { deskPage } from './pages/desk-page.ts';
import { keyRoute } from './pages/key-route.ts';
import { passwordFault } from './password-rules.ts';
import { addStaff, disableStaff, newStaff } from './staff.ts';

/** The administrator's page: people and keys. */
export function deskPages(app: FastifyInstance, deps: Deps): void {
  const route = {
    url: '/desk',
    side: 'desk' as const,
    page: (tx: Tx, given: PageRequest, again?: Shown) => deskPage(tx, given, again ?? FRESH),
  };
  getPage(app, deps, route);
  keyRoute(app, deps);
  postForm(app, deps, {
    ...route,
    action: '/desk/staff',
    run: async (tx, { caller, fields }) => {
      const { key: _, ...typed } = fields;
      const { password: __, ...kept } = typed;
      const read = readForm(newStaff, typed, { lengths: 'in' });
      if (!read.ok) return { faults: read.faults, typed: kept };
      const weak = passwordFault(read.data.password, [read.data.email, read.data.name]);
      if (weak.length > 0) return { faults: weak, typed: kept };
      await addStaff(tx, caller, read.data);
      return { goTo: '/desk' };
    },
  });
  postForm(app, deps, {
    ...route,
    action: '/desk/staff/leave',
    run: async (tx, { caller, fields }) => {
      await disableStaff(tx, caller, fields.person ?? '', deps.now());
      return { goTo: '/desk' };
    },
  });
  postForm(app, deps, {
    ...route,
    action: '/desk/keys/revoke',
    run: async (tx, { caller, fields }) => {
      await revokeApiKey(tx, caller, fields['key-id'] ?? '', deps.now());
      return { goTo: '/desk' };
    },
  });
}
