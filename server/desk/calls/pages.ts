import type { FastifyInstance } from 'fastify';
import type { RejectedForm } from '../../call/forms.ts';
import type { Tx } from '../../database/database.ts';
import type { Deps } from '../../web/deps.ts';
import { postForm } from '../../web/form-route.ts';
import type { PageRequest } from '../../web/page-request.ts';
import { getPage } from '../../web/page-route.ts';
import { listPage } from './list-page.ts';
import { newCallPage, openFromForm } from './new-call.ts';

/** The list of calls, and a new one. */
export function callListPages(app: FastifyInstance, deps: Deps): void {
  const side = 'desk' as const;
  getPage(app, deps, { url: '/calls', side, page: listPage });
  const newCall = {
    url: '/calls/new',
    side,
    page: async (_tx: Tx, _req: PageRequest, rejected?: RejectedForm) => newCallPage(rejected),
  };
  getPage(app, deps, newCall);
  // At an address of its own, so that what was refused is told from a call that is opened afresh.
  postForm(app, deps, { ...newCall, action: '/calls/new/open', run: openFromForm });
}
