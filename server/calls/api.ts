import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import {
  closeCall,
  liftHold,
  newNote,
  openCall,
  setHold,
  shareBuild,
  triage,
} from '../../shared/schemas/commands.ts';
import { words } from '../../shared/schemas/texts.ts';
import { callView, listedCallView, noteView, showCall, showListedCall, showNote } from '../api/views.ts';
import type { Deps } from '../deps.ts';
import { commandRoute, idParams, noParams, readRoute } from '../http/api-route.ts';
import { shownOnce } from '../http/api-schemas.ts';
import { finishPromise, keepNote } from '../notes/notes.ts';
import { listShareLinks, revokeShareLink, shareCall } from '../sharing/share-links.ts';
import * as calls from './calls.ts';

const listQuery = z.strictObject({
  search: words('words in caller, build or goal, or a call number').optional(),
  before: z.coerce
    .number()
    .int()
    .min(1)
    .max(2_147_483_647)
    .optional()
    .meta({ description: 'only calls with a smaller number' }),
  limit: z.coerce.number().int().min(1).max(200).default(50).meta({ description: 'how many at the most' }),
});

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

function showLink(link: {
  createdAt: Date;
  expiresAt: Date;
  revokedAt: Date | undefined;
  id: string;
  holder: string;
  callId: string;
}) {
  const { createdAt, expiresAt, revokedAt, ...rest } = link;
  return {
    ...rest,
    createdAt: createdAt.toISOString(),
    expiresAt: expiresAt.toISOString(),
    ...(revokedAt === undefined ? {} : { revokedAt: revokedAt.toISOString() }),
  };
}

/** JSON routes of calls: opening, triage, hold, closing, notes and share links. */
export function callsApi(app: FastifyInstance, deps: Deps): void {
  const tag = 'calls';
  readRoute(app, deps, {
    operationId: 'listCalls',
    tag,
    summary: 'Calls of the shop, newest first',
    url: '/api/v1/calls',
    params: noParams,
    query: listQuery,
    answer: z.object({ calls: z.array(listedCallView), next: z.int().optional() }),
    read: async (tx, { caller, query }) => {
      const found = await calls.listCalls(tx, caller, query);
      const last = found.length === query.limit ? found.at(-1) : undefined;
      return { calls: found.map(showListedCall), ...(last === undefined ? {} : { next: last.number }) };
    },
  });
  commandRoute(app, deps, {
    operationId: 'openCall',
    tag,
    summary: 'Open a call, on a new build or a known one',
    method: 'POST',
    url: '/api/v1/calls',
    params: noParams,
    body: openCall,
    status: 201,
    answer: callView,
    run: async (tx, { caller, body }) => {
      const call = await calls.open(tx, caller, body);
      return { body: showCall(call), location: `/api/v1/calls/${call.id}` };
    },
  });
  readRoute(app, deps, {
    operationId: 'getCall',
    tag,
    summary: 'One call',
    url: '/api/v1/calls/:id',
    params: idParams,
    query: noParams,
    answer: callView,
    read: async (tx, { caller, params }) => showCall(await calls.getCall(tx, caller, params.id)),
  });
  commandRoute(app, deps, {
    operationId: 'recordTriage',
    tag,
    summary: 'Record whether it runs, is apart, and whether anything hit, bent or came loose',
    method: 'PUT',
    url: '/api/v1/calls/:id/triage',
    params: idParams,
    body: triage,
    status: 200,
    answer: callView,
    run: async (tx, { caller, params, body }) => ({
      body: showCall(await calls.recordTriage(tx, caller, params.id, body)),
    }),
  });
  commandRoute(app, deps, {
    operationId: 'setHold',
    tag,
    summary: 'Set the hold: nobody turns the engine',
    method: 'POST',
    url: '/api/v1/calls/:id/hold',
    params: idParams,
    body: setHold,
    status: 200,
    answer: callView,
    run: async (tx, { caller, params, body }) => ({
      body: showCall(await calls.setHold(tx, caller, params.id, body.reason)),
    }),
  });
  commandRoute(app, deps, {
    operationId: 'liftHold',
    tag,
    summary: 'Lift the hold, with the reason',
    method: 'POST',
    url: '/api/v1/calls/:id/hold/lift',
    params: idParams,
    body: liftHold,
    status: 200,
    answer: callView,
    run: async (tx, { caller, params, body }) => ({
      body: showCall(await calls.liftHold(tx, caller, params.id, body.reason)),
    }),
  });
  commandRoute(app, deps, {
    operationId: 'closeCall',
    tag,
    summary: 'Close a call with its outcome',
    method: 'POST',
    url: '/api/v1/calls/:id/close',
    params: idParams,
    body: closeCall,
    status: 200,
    answer: callView,
    run: async (tx, { caller, params, body }) => ({
      body: showCall(await calls.closeCall(tx, caller, params.id, body.outcome)),
    }),
  });
  commandRoute(app, deps, {
    operationId: 'keepNote',
    tag,
    summary: 'Keep a note, advice given, or a promise with owner and date',
    method: 'POST',
    url: '/api/v1/calls/:id/notes',
    params: idParams,
    body: newNote,
    status: 201,
    answer: noteView,
    run: async (tx, { caller, params, body }) => ({
      body: showNote(await keepNote(tx, caller, params.id, body)),
    }),
  });
  commandRoute(app, deps, {
    operationId: 'finishPromise',
    tag,
    summary: 'Mark a promise as kept',
    method: 'POST',
    url: '/api/v1/calls/:id/notes/:noteId/done',
    params: z.strictObject({ id: z.uuid(), noteId: z.uuid() }),
    body: noParams,
    status: 200,
    answer: z.object({ done: z.uuid() }),
    run: async (tx, { caller, params }) => {
      await finishPromise(tx, caller, params.id, params.noteId);
      return { body: { done: params.noteId } };
    },
  });
  readRoute(app, deps, {
    operationId: 'listShareLinks',
    tag: 'access',
    summary: 'Share links of the call’s build, without their secrets',
    url: '/api/v1/calls/:id/share-links',
    params: idParams,
    query: noParams,
    answer: z.object({ links: z.array(linkView) }),
    read: async (tx, { caller, params }) => {
      const call = await calls.getCall(tx, caller, params.id);
      return { links: (await listShareLinks(tx, caller, call.buildId)).map(showLink) };
    },
  });
  commandRoute(app, deps, {
    operationId: 'shareCall',
    tag: 'access',
    summary: 'Make a share link for the builder; its secret is shown this once',
    method: 'POST',
    url: '/api/v1/calls/:id/share-links',
    params: idParams,
    body: shareBuild,
    status: 201,
    answer: z.object({ link: linkView, secret: shownOnce, path: shownOnce }),
    run: async (tx, { caller, params, body }) => {
      const { link, secret } = await shareCall(tx, caller, params.id, body, deps.now());
      return { body: { link: showLink(link) }, once: { secret, path: `/b/${secret}` } };
    },
  });
  commandRoute(app, deps, {
    operationId: 'revokeShareLink',
    tag: 'access',
    summary: 'Revoke a share link and the sessions opened with it',
    method: 'DELETE',
    url: '/api/v1/calls/:id/share-links/:linkId',
    params: z.strictObject({ id: z.uuid(), linkId: z.uuid() }),
    body: noParams,
    status: 200,
    answer: z.object({ revoked: z.uuid() }),
    run: async (tx, { caller, params }) => {
      await revokeShareLink(tx, caller, params.id, params.linkId, deps.now());
      return { body: { revoked: params.linkId } };
    },
  });
}
