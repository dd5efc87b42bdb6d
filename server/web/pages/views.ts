import view from '@fastify/view';
import type { Eta } from 'eta';
import type { FastifyInstance } from 'fastify';
import { VIEWS } from '../../../views/engine.ts';

/**
 * Pages by @fastify/view, each inside the layout. `production` keeps the compiled templates whatever NODE_ENV says:
 * the plugin sets the engine's own cache by it at every page.
 */
export async function pageViews(app: FastifyInstance, views: Eta): Promise<void> {
  await app.register(view, { engine: { eta: views }, root: VIEWS, layout: '/layout', production: true });
}
