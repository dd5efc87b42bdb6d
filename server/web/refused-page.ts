import type { FastifyInstance } from 'fastify';
import type { Deps } from './deps.ts';
import { draftOf } from './forms/drafts.ts';
import { type PageRequest, pathOf, receive } from './page-request.ts';
import type { PageRoute } from './page-route.ts';
import { renderPage } from './pages/render.ts';

/** Where somebody is led who asks for the address of a form that was not refused: the page that has it. */
function homeOfForm(path: string, pageUrl: string, params: PageRequest['params']): string {
  const call = /^\/calls\/[^/]+|^\/bench/.exec(path)?.[0];
  const page = call ?? pageUrl.replace(/:(\w+)/g, (_, name: string) => params[name] ?? '');
  // A form whose page has no address of its own stands on the one above it.
  return page === path ? path.replace(/\/[^/]*$/, '') || '/' : page;
}

/** The address of a form asked for by itself: what was refused there is shown once more, with nothing lost. */
export function refusedPage(app: FastifyInstance, deps: Deps, route: PageRoute, action: string): void {
  app.get(action, { schema: { hide: true } }, async (request, reply) => {
    const path = pathOf(request);
    const shown = await receive(
      request,
      reply,
      deps,
      route.side,
      async (tx, req) => {
        const draft = await draftOf(tx, req.principal, path);
        if (draft === undefined) {
          // Made and thrown away: whoever may not see the page is not led to it either.
          await route.page(tx, req);
          return { home: homeOfForm(path, route.url, req.params) };
        }
        // What the other side enters meanwhile is not merged into it: its address answers by the draft alone.
        const { live: _, ...page } = await route.page(tx, { ...req, fields: draft.typed }, draft);
        return { page: { ...page, title: `Error: ${page.title}`, principal: req.principal } };
      },
      'read',
    );
    if (shown.page !== undefined) return renderPage(deps, request, reply, shown.page);
    return reply.code(303).header('location', shown.home).header('cache-control', 'no-store').send();
  });
}
