import type { FastifyInstance } from 'fastify';
import { shareBuild } from '../../../shared/schemas/commands.ts';
import { requireStaff } from '../../auth/principal.ts';
import { callIdOf, loadContext } from '../../call/context.ts';
import type { RejectedForm } from '../../call/forms.ts';
import type { Tx } from '../../database/database.ts';
import { revokeShareLink, shareCall } from '../../records/share-links/share-links.ts';
import type { Deps } from '../../web/deps.ts';
import { postForm } from '../../web/form-route.ts';
import { readForm } from '../../web/forms/read-form.ts';
import { originOf } from '../../web/http/origin.ts';
import { type PageRequest, received } from '../../web/page-request.ts';
import { getPage } from '../../web/page-route.ts';
import { renderPage } from '../../web/pages/render.ts';
import { idempotencyKey, runOnceInShop } from '../../web/run-once.ts';
import { type CallFrame, lastStep } from '../frame.ts';
import { stepPage } from '../step-page.ts';
import { shareBody } from './share-page.ts';

const URL = '/calls/:callId/share';

async function sharePage(
  deps: Deps,
  frame: CallFrame,
  tx: Tx,
  req: PageRequest,
  rejected?: RejectedForm,
  made?: string,
) {
  requireStaff(req.principal);
  const context = await loadContext(tx, req);
  const body = shareBody(context, context.record.shareLinks, deps.now(), rejected, made);
  return stepPage(
    frame,
    context,
    { step: lastStep(frame), title: 'Share with the builder', ofCall: true },
    body,
    rejected,
  );
}

/** Makes the link and answers its address; undefined where the same form made it before. */
async function makeLink(deps: Deps, req: PageRequest, input: Parameters<typeof shareCall>[3]) {
  const { key, ...body } = req.fields;
  let secret: string | undefined;
  await runOnceInShop(
    deps.db,
    req.principal,
    {
      method: 'POST',
      path: `/calls/${callIdOf(req)}/share`,
      body,
      key: idempotencyKey(key || undefined),
      whileRunning: 'wait',
    },
    async (tx) => {
      const made = await shareCall(tx, req.principal, callIdOf(req), input, deps.now());
      secret = made.secret;
      return { status: 201, body: { id: made.link.id } };
    },
  );
  if (secret === undefined) return undefined;
  return `${originOf(deps, req.request)}/b/${secret}`;
}

/** Links for the builder: made, shown once with a QR code, listed and ended. */
export function sharePages(app: FastifyInstance, deps: Deps, frame: CallFrame): void {
  const page = (tx: Tx, req: PageRequest, rejected?: RejectedForm) =>
    sharePage(deps, frame, tx, req, rejected);
  getPage(app, deps, { url: URL, side: 'desk', page });
  app.post(URL, { schema: { hide: true } }, async (request, reply) => {
    const req = await received(request, reply, deps, 'desk');
    requireStaff(req.principal);
    const read = readForm(shareBuild, req.fields, { lengths: 'in' });
    const rejected = read.ok ? undefined : { faults: read.faults, typed: req.fields };
    const link = read.ok ? await makeLink(deps, req, read.data) : undefined;
    const shown = await deps.db.shopTransaction(
      req.principal.shopId,
      (tx) => sharePage(deps, frame, tx, req, rejected, link),
      'read',
    );
    const { live: _, ...still } = shown;
    return renderPage(deps, request, reply, {
      ...still,
      title: read.ok ? shown.title : `Error: ${shown.title}`,
      status: read.ok ? 201 : 422,
      principal: req.principal,
    });
  });
  postForm(app, deps, {
    url: URL,
    action: `${URL}/:linkId/end`,
    side: 'desk',
    page,
    run: async (tx, req) => {
      await revokeShareLink(tx, req.principal, callIdOf(req), req.params.linkId ?? '', deps.now());
      return { goTo: `/calls/${callIdOf(req)}/share` };
    },
  });
}
