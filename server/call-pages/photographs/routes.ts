import multipart from '@fastify/multipart';
import type { FastifyInstance } from 'fastify';
import { callIdOf } from '../../call/context.ts';
import type { RejectedForm } from '../../call/forms.ts';
import type { Tx } from '../../database/database.ts';
import { getCall } from '../../records/calls/calls.ts';
import { photographBytes } from '../../records/photographs/photographs.ts';
import { MOST_BYTES } from '../../records/photographs/re-encode.ts';
import type { Deps } from '../../web/deps.ts';
import { type PageRequest, type PageSide, received } from '../../web/page-request.ts';
import { getPage } from '../../web/page-route.ts';
import type { CallFrame } from '../frame.ts';
import { photographsPage } from './photographs-page.ts';
import { uploadRoute } from './upload-route.ts';

function photographRoutes(app: FastifyInstance, deps: Deps, frame: CallFrame, side: PageSide): void {
  const base = side === 'desk' ? '/calls/:callId' : '/bench';
  const page = (tx: Tx, req: PageRequest, rejected?: RejectedForm) =>
    photographsPage(frame, tx, req, rejected);
  getPage(app, deps, { url: `${base}/photographs`, side, page });
  uploadRoute(app, deps, frame, side, base);
  app.get(`${base}/photographs/:photographId`, { schema: { hide: true } }, async (request, reply) => {
    const req = await received(request, reply, deps, side);
    const jpeg = await deps.db.shopTransaction(req.principal.shopId, async (tx) => {
      const { buildId } = await getCall(tx, req.principal, callIdOf(req));
      return photographBytes(tx, req.principal, buildId, req.params.photographId ?? '');
    });
    // A picture of somebody's engine stays in no cache: a session or a link ends at any moment.
    return reply.type('image/jpeg').header('cache-control', 'no-store').send(jpeg);
  });
}

/** Photographs of a call, on both sides. */
export function photographPages(app: FastifyInstance, deps: Deps, frame: CallFrame): void {
  app.register(async (uploads) => {
    await uploads.register(multipart, {
      limits: { fileSize: MOST_BYTES, files: 1, fields: 12, fieldSize: 4096 },
    });
    photographRoutes(uploads, deps, frame, 'desk');
    photographRoutes(uploads, deps, frame, 'bench');
  });
}
