import type { FastifyInstance } from 'fastify';
import type { Deps } from '../deps.ts';

const ROBOTS = 'User-agent: *\nAllow: /$\nAllow: /reference\nDisallow: /\n';

/** Style sheet, script and mark, each at an address that changes with its content. */
export function assetRoutes(app: FastifyInstance, deps: Deps): void {
  for (const asset of [deps.assets.style, deps.assets.script, deps.assets.icon]) {
    app.get(asset.href, { schema: { hide: true } }, (_request, reply) =>
      reply.type(asset.type).header('cache-control', 'public, max-age=31536000, immutable').send(asset.body),
    );
  }
  app.get('/robots.txt', { schema: { hide: true } }, (_request, reply) =>
    reply.type('text/plain; charset=utf-8').send(ROBOTS),
  );
}
