import type { FastifyInstance } from 'fastify';
import type { Deps } from '../web/deps.ts';
import { renderPage } from '../web/pages/render.ts';
import { pagePrincipal } from '../web/principals.ts';

/** The start: the desk goes to its calls, everyone else is told what this is. */
export function homePage(app: FastifyInstance, deps: Deps): void {
  app.get('/', { schema: { hide: true } }, async (request, reply) => {
    const principal = await pagePrincipal(request, deps, 'desk');
    if (principal !== undefined) return reply.code(303).header('location', '/calls').send();
    return renderPage(deps, request, reply, {
      template: 'home',
      title: 'A support call about a rocker arm',
      data: {},
    });
  });
}
