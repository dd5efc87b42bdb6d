import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { eventView, showEvent } from '../api/views.ts';
import type { Deps } from '../deps.ts';
import { idParams, noParams, readRoute } from '../http/api-route.ts';
import { eventsAfter } from './events.ts';
import { exportBuild, exportView } from './export.ts';

const after = z.strictObject({
  after: z.coerce.number().int().min(0).default(0).meta({ description: 'the last sequence number you have' }),
  limit: z.coerce.number().int().min(1).max(500).default(200).meta({ description: 'how many at the most' }),
});

/** JSON routes of the record: events in order, and the full export of a build. */
export function recordApi(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'listEvents',
    tag: 'builds',
    summary: 'Events of a build after a sequence number',
    url: '/api/v1/builds/:id/events',
    params: idParams,
    query: after,
    answer: z.object({ events: z.array(eventView) }),
    read: async (tx, { caller, params, query }) => ({
      events: (await eventsAfter(tx, caller, params.id, query.after, query.limit)).map(showEvent),
    }),
  });
  readRoute(app, deps, {
    operationId: 'exportBuild',
    tag: 'builds',
    summary:
      'Everything of a build: calls, revisions, arms, swaps, readings, sheet, part, workings, photographs, notes, events',
    url: '/api/v1/builds/:id/export',
    params: idParams,
    query: noParams,
    answer: exportView,
    read: async (tx, { caller, params }) => exportBuild(tx, caller, params.id, deps.now()),
  });
}
