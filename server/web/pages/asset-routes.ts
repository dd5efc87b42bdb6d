import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Deps } from '../deps.ts';
import { acceptsCoding } from './accepted-coding.ts';
import type { Asset } from './asset.ts';
import { NO_SIGNAL } from './assets.ts';
import { renderPage } from './render.ts';

const ROBOTS = 'User-agent: *\nAllow: /$\nAllow: /reference\nDisallow: /\n';
const FOR_EVER = { 'cache-control': 'public, max-age=31536000, immutable' };
/** A newer worker is found at once; it may ask this service for what it keeps, and load nothing else. */
const WORKER = {
  'cache-control': 'no-cache',
  'content-security-policy': "default-src 'none'; connect-src 'self'",
};

function sendAsset(
  { type, body, packed }: Asset,
  headers: Readonly<Record<string, string>>,
  request: FastifyRequest,
  reply: FastifyReply,
): FastifyReply {
  const accepted = request.headers['accept-encoding'];
  const coded = packed.find(({ coding }) => acceptsCoding(accepted?.toString(), coding));
  if (coded !== undefined) reply.header('content-encoding', coded.coding);
  return reply
    .type(type)
    .headers({ ...headers, vary: 'accept-encoding' })
    .send(coded?.body ?? body);
}

/** Style sheet, script and mark, each at an address that changes with its content, and the worker at its own. */
export function assetRoutes(app: FastifyInstance, deps: Deps): void {
  const { style, script, icon, touchIcon, screenIcons, manifest, worker } = deps.assets;
  for (const asset of [style, script, icon, touchIcon, ...screenIcons, manifest]) {
    app.get(asset.href, { schema: { hide: true } }, (request, reply) =>
      sendAsset(asset, FOR_EVER, request, reply),
    );
  }
  app.get(worker.href, { schema: { hide: true } }, (request, reply) =>
    sendAsset(worker, WORKER, request, reply),
  );
  app.get(NO_SIGNAL, { schema: { hide: true } }, (request, reply) =>
    renderPage(deps, request, reply, {
      template: 'plain',
      title: 'No signal',
      side: 'builder',
      data: {
        title: 'This page is not on the phone yet',
        intro:
          'There is no signal, and this page was not opened on this phone before. Pages that were can still be opened, and what was entered is kept.',
        sections: [
          {
            template: '/parts/button',
            data: { label: 'Open the last page', href: '/bench', kind: 'primary' },
          },
        ],
      },
    }),
  );
  app.get('/robots.txt', { schema: { hide: true } }, (_request, reply) =>
    reply.type('text/plain; charset=utf-8').send(ROBOTS),
  );
}
