import type { FastifyInstance } from 'fastify';
import type { Tx } from '../database/database.ts';
import type { Deps } from './deps.ts';
import type { Fields, FormFault } from './forms/read-form.ts';
import { type PageRequest, type PageSide, receive } from './page-request.ts';
import { type Page, renderPage } from './pages/render.ts';

export interface PageRoute {
  readonly url: string;
  readonly side: PageSide;
  /** Builds the page from a transaction of the caller's shop; with faults, as it was typed. */
  page(
    tx: Tx,
    req: PageRequest,
    rejected?: { readonly faults: readonly FormFault[]; readonly typed: Fields },
  ): Promise<Page>;
}

/** A page that is read. */
export function getPage(app: FastifyInstance, deps: Deps, route: PageRoute): void {
  app.get(route.url, { schema: { hide: true } }, async (request, reply) => {
    const page = await receive(
      request,
      reply,
      deps,
      route.side,
      async (tx, req) => ({
        ...(await route.page(tx, req)),
        principal: req.principal,
      }),
      'read',
    );
    return renderPage(deps, request, reply, page);
  });
}
