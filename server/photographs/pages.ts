import multipart from '@fastify/multipart';
import type { FastifyInstance } from 'fastify';
import { getCall } from '../calls/calls.ts';
import { callIdOf } from '../calls/pages/sight.ts';
import type { Deps } from '../deps.ts';
import { getPage, type PageSide, received } from '../http/page-route.ts';
import { photographsPage } from './pages/photographs-page.ts';
import { uploadRoute } from './pages/upload-route.ts';
import { photographBytes } from './photographs.ts';
import { MOST_BYTES } from './re-encode.ts';

function photographRoutes(app: FastifyInstance, deps: Deps, side: PageSide): void {
  const base = side === 'desk' ? '/calls/:callId' : '/bench';
  getPage(app, deps, { url: `${base}/photographs`, side, page: photographsPage });
  uploadRoute(app, deps, side, base);
  app.get(`${base}/photographs/:photographId`, { schema: { hide: true } }, async (request, reply) => {
    const given = await received(request, reply, deps, side);
    const jpeg = await deps.db.inShop(given.caller.shopId, async (tx) => {
      const { buildId } = await getCall(tx, given.caller, callIdOf(given));
      return photographBytes(tx, given.caller, buildId, given.params.photographId ?? '');
    });
    return reply.type('image/jpeg').header('cache-control', 'private, max-age=3600').send(jpeg);
  });
}

/** Photographs of a call, on both sides. */
export function photographPages(app: FastifyInstance, deps: Deps): void {
  app.register(async (uploads) => {
    await uploads.register(multipart, {
      limits: { fileSize: MOST_BYTES, files: 1, fields: 12, fieldSize: 4096 },
    });
    photographRoutes(uploads, deps, 'desk');
    photographRoutes(uploads, deps, 'bench');
  });
}
