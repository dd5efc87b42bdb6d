import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { shareBuild } from '../../shared/schemas/commands.ts';
import { getCall } from '../records/calls/calls.ts';
import {
  listShareLinks,
  revokeShareLink,
  type ShareLink,
  shareCall,
} from '../records/share-links/share-links.ts';
import { commandRoute, idParams, noParams, readRoute } from '../web/api-route.ts';
import { shownOnce } from '../web/api-schemas.ts';
import type { Deps } from '../web/deps.ts';

const linkView = z
  .object({
    id: z.uuid(),
    holder: z.string(),
    callId: z.uuid(),
    createdAt: z.iso.datetime(),
    expiresAt: z.iso.datetime(),
    revokedAt: z.iso.datetime().optional(),
  })
  .meta({ id: 'ShareLink' });

function showLink(link: ShareLink) {
  const { createdAt, expiresAt, revokedAt, ...rest } = link;
  return {
    ...rest,
    createdAt: createdAt.toISOString(),
    expiresAt: expiresAt.toISOString(),
    ...(revokedAt === undefined ? {} : { revokedAt: revokedAt.toISOString() }),
  };
}

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
    answer: z.object({ links: z.array(linkView) }),
    read: async (tx, { principal, params }) => {
      const call = await getCall(tx, principal, params.id);
      return { links: (await listShareLinks(tx, principal, call.buildId)).map(showLink) };
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
    answer: z.object({ link: linkView, secret: shownOnce, path: shownOnce }),
    run: async (tx, { principal, params, body }) => {
      const { link, secret } = await shareCall(tx, principal, params.id, body, deps.now());
      return { body: { link: showLink(link) }, once: { secret, path: `/b/${secret}` } };
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
    answer: z.object({ revoked: z.uuid() }),
    run: async (tx, { principal, params }) => {
      await revokeShareLink(tx, principal, params.id, params.linkId, deps.now());
      return { body: { revoked: params.linkId } };
    },
  });
}
