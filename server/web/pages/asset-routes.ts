import type { FastifyInstance } from 'fastify';
import type { Deps } from '../deps.ts';
import { acceptsCoding } from './accepted-coding.ts';

const ROBOTS = 'User-agent: *\nAllow: /$\nAllow: /reference\nDisallow: /\n';

/** Style sheet, script and mark, each at an address that changes with its content. */
export function assetRoutes(app: FastifyInstance, deps: Deps): void {
  for (const asset of [deps.assets.style, deps.assets.script, deps.assets.icon]) {
    app.get(asset.href, { schema: { hide: true } }, (request, reply) => {
      const accepted = request.headers['accept-encoding'];
      const packed = asset.packed.find(({ coding }) => acceptsCoding(accepted?.toString(), coding));
      if (packed !== undefined) reply.header('content-encoding', packed.coding);
      return reply
        .type(asset.type)
        .headers({ 'cache-control': 'public, max-age=31536000, immutable', vary: 'accept-encoding' })
        .send(packed?.body ?? asset.body);
    });
  }
  app.get('/robots.txt', { schema: { hide: true } }, (_request, reply) =>
    reply.type('text/plain; charset=utf-8').send(ROBOTS),
  );
}
