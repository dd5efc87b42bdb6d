import type { FastifyInstance } from 'fastify';
import { shareBuild } from '../../shared/schemas/commands.ts';
import { requireStaff } from '../access/caller.ts';
import type { Again } from '../calls/pages/forms-on-page.ts';
import { callIdOf, lookAt } from '../calls/pages/sight.ts';
import { stepPage } from '../calls/pages/step-page.ts';
import type { Tx } from '../database/database.ts';
import type { Deps } from '../deps.ts';
import { readForm } from '../forms/read-form.ts';
import { getPage, type PageRequest, postForm, received } from '../http/page-route.ts';
import { idempotencyKey, perform } from '../http/perform.ts';
import { renderPage } from '../pages/render.ts';
import { listShareLinks, revokeShareLink, shareCall } from './share-links.ts';
import { shareBody } from './share-page.ts';

const URL = '/calls/:callId/share';

async function sharePage(deps: Deps, tx: Tx, given: PageRequest, again?: Again, made?: string) {
  requireStaff(given.caller);
  const sight = await lookAt(tx, given);
  const links = await listShareLinks(tx, given.caller, sight.build.id);
  const body = shareBody(sight, links, deps.now(), again, made);
  return stepPage(sight, { step: 'notes', title: 'Share with the builder' }, body, again);
}

/** Makes the link and answers its address; undefined where the same form made it before. */
async function makeLink(deps: Deps, given: PageRequest, input: Parameters<typeof shareCall>[3]) {
  const { key, ...body } = given.fields;
  let secret: string | undefined;
  await perform(
    deps.db,
    given.caller,
    {
      method: 'POST',
      path: `/calls/${callIdOf(given)}/share`,
      body,
      key: idempotencyKey(key || undefined),
      whileRunning: 'wait',
    },
    async (tx) => {
      const made = await shareCall(tx, given.caller, callIdOf(given), input, deps.now());
      secret = made.secret;
      return { status: 201, body: { id: made.link.id } };
    },
  );
  if (secret === undefined) return undefined;
  const base =
    deps.config.PUBLIC_URL?.replace(/\/$/, '') ?? `${given.request.protocol}://${given.request.host}`;
  return `${base}/b/${secret}`;
}

/** Links for the builder: made, shown once with a QR code, listed and ended. */
export function sharePages(app: FastifyInstance, deps: Deps): void {
  const page = (tx: Tx, given: PageRequest, again?: Again) => sharePage(deps, tx, given, again);
  getPage(app, deps, { url: URL, side: 'desk', page });
  app.post(URL, { schema: { hide: true } }, async (request, reply) => {
    const given = await received(request, reply, deps, 'desk');
    requireStaff(given.caller);
    const read = readForm(shareBuild, given.fields, { lengths: 'in' });
    const again = read.ok ? undefined : { faults: read.faults, typed: given.fields };
    const link = read.ok ? await makeLink(deps, given, read.data) : undefined;
    const shown = await deps.db.inShop(given.caller.shopId, (tx) => sharePage(deps, tx, given, again, link));
    const { live: _, ...still } = shown;
    return renderPage(deps, request, reply, {
      ...still,
      title: read.ok ? shown.title : `Error: ${shown.title}`,
      status: read.ok ? 201 : 422,
      caller: given.caller,
    });
  });
  postForm(app, deps, {
    url: URL,
    action: `${URL}/:linkId/end`,
    side: 'desk',
    page,
    run: async (tx, given) => {
      await revokeShareLink(tx, given.caller, callIdOf(given), given.params.linkId ?? '', deps.now());
      return { goTo: `/calls/${callIdOf(given)}/share` };
    },
  });
}
