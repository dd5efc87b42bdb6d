import type { FastifyInstance } from 'fastify';
import type { Deps } from '../deps.ts';
import { pageCaller } from '../http/callers.ts';
import { renderPage } from './render.ts';

/** The start: the desk goes to its calls, everyone else is told what this is. */
export function homePage(app: FastifyInstance, deps: Deps): void {
  app.get('/', { schema: { hide: true } }, async (request, reply) => {
    const caller = await pageCaller(request, deps, 'desk');
    if (caller !== undefined) return reply.code(303).header('location', '/calls').send();
    return renderPage(deps, request, reply, {
      template: 'home',
      title: 'A support call about a rocker arm',
      data: {},
    });
  });
}
