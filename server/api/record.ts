import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import { eventsAfter } from '../events/build-events.ts';
import { eventView, showEvent } from '../records/whole-build/event-view.ts';
import { exportBuild, exportView, FOR_EXPORT } from '../records/whole-build/export.ts';
import { readBuildRecord } from '../records/whole-build/load-build.ts';
import { idParams, noParams, readRoute } from '../web/api-route.ts';
import type { Deps } from '../web/deps.ts';

const eventsView = z.object({ events: z.array(eventView) });

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
    answer: eventsView,
    read: async (tx, { principal, params, query }) =>
      answer(eventsView, {
        events: (await eventsAfter(tx, principal, params.id, query.after, query.limit)).map(showEvent),
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
    read: async (tx, { principal, params }) =>
      exportBuild(await readBuildRecord(tx, principal, { buildId: params.id }, FOR_EXPORT), deps.now()),
  });
}
