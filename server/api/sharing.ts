import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import { shareBuild } from '../../shared/schemas/commands.ts';
import { getCall } from '../records/calls/calls.ts';
import { listShareLinks, revokeShareLink, shareCall } from '../records/share-links/share-links.ts';
import { shareLinkView, showShareLink } from '../records/share-links/view.ts';
import { commandRoute, idParams, noParams, readRoute } from '../web/api-route.ts';
import { shownOnce } from '../web/api-schemas.ts';
import type { Deps } from '../web/deps.ts';

const linksView = z.object({ links: z.array(shareLinkView) });
const sharedView = z.object({ link: shareLinkView, secret: shownOnce, path: shownOnce });
const revokedView = z.object({ revoked: z.uuid() });

/** JSON routes of a call's share links. */
export function sharingApi(app: FastifyInstance, deps: Deps): void {
  const tag = 'access';
  readRoute(app, deps, {
    operationId: 'listShareLinks',
    tag,
    summary: 'Share links of the call’s build, without their secrets',
    url: '/api/v1/calls/:id/share-links',
    params: idParams,
    query: noParams,
    answer: linksView,
    read: async (tx, { principal, params }) => {
      const call = await getCall(tx, principal, params.id);
      return answer(linksView, {
        links: (await listShareLinks(tx, principal, call.buildId)).map(showShareLink),
      });
    },
  });
  commandRoute(app, deps, {
    operationId: 'shareCall',
    tag,
    summary: 'Make a share link for the builder; its secret is shown this once',
    method: 'POST',
    url: '/api/v1/calls/:id/share-links',
    params: idParams,
    body: shareBuild,
    status: 201,
    answer: sharedView,
    run: async (tx, { principal, params, body }) => {
      const { link, secret } = await shareCall(tx, principal, params.id, body, deps.now());
      const shown = { link: showShareLink(link), secret: undefined, path: undefined };
      return { body: answer(sharedView, shown), once: { secret, path: `/b/${secret}` } };
    },
  });
  commandRoute(app, deps, {
    operationId: 'revokeShareLink',
    tag,
    summary: 'Revoke a share link and the sessions opened with it',
    method: 'DELETE',
    url: '/api/v1/calls/:id/share-links/:linkId',
    params: z.strictObject({ id: z.uuid(), linkId: z.uuid() }),
    body: noParams,
    status: 200,
    answer: revokedView,
    run: async (tx, { principal, params }) => {
      await revokeShareLink(tx, principal, params.id, params.linkId, deps.now());
      return { body: answer(revokedView, { revoked: params.linkId }) };
    },
  });
}
