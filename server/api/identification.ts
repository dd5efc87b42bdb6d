import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import {
  correctPartReading,
  newHandPart,
  newPartReading,
  sayHandPart,
} from '../../shared/schemas/part-reading.ts';
import { assessedAs } from '../assessment/assessed.ts';
import { identificationView, showIdentification } from '../assessment/identification/view.ts';
import { addHandPart, nameHandPart } from '../records/part-readings/hand-parts.ts';
import { keepPartReading, replacePartReading } from '../records/part-readings/part-readings.ts';
import {
  handPartView,
  partReadingView,
  showHandPart,
  showPartReading,
} from '../records/part-readings/view.ts';
import { readBuildRecord } from '../records/whole-build/load-build.ts';
import { commandRoute, idParams, noParams, readRoute } from '../web/api-route.ts';
import type { Deps } from '../web/deps.ts';

/** JSON routes of identifying a part: its readings and marks, and what it may be. */
export function identificationApi(app: FastifyInstance, deps: Deps): void {
  const tag = 'identification';
  readRoute(app, deps, {
    operationId: 'getIdentification',
    tag,
    summary: 'What each part in the hand may be, by its readings and the shop’s catalogue',
    url: '/api/v1/builds/:id/identification',
    params: idParams,
    query: noParams,
    answer: identificationView,
    read: async (tx, { principal, params }) => {
      const record = await readBuildRecord(tx, principal, { buildId: params.id }, { catalogue: 'whole' });
      return showIdentification(record, assessedAs(principal, record));
    },
  });
  commandRoute(app, deps, {
    operationId: 'keepPartReading',
    tag,
    summary: 'Keep a size, a feature or a mark of the part',
    method: 'POST',
    url: '/api/v1/builds/:id/identification/readings',
    params: idParams,
    body: newPartReading,
    status: 201,
    answer: partReadingView,
    run: async (tx, { principal, params, body }) => ({
      body: showPartReading(await keepPartReading(tx, principal, params.id, body)),
    }),
  });
  commandRoute(app, deps, {
    operationId: 'replacePartReading',
    tag,
    summary: 'Replace a reading of the part as a whole, or strike it out, with the reason',
    method: 'POST',
    url: '/api/v1/builds/:id/identification/readings/:readingId/corrections',
    params: z.strictObject({ id: z.uuid(), readingId: z.uuid() }),
    body: correctPartReading,
    status: 201,
    answer: partReadingView,
    run: async (tx, { principal, params, body }) => ({
      body: showPartReading(await replacePartReading(tx, principal, params.id, params.readingId, body)),
    }),
  });
  commandRoute(app, deps, {
    operationId: 'addPartInHand',
    tag,
    summary: 'One more part in the hand, with the arm of the build that it is',
    method: 'POST',
    url: '/api/v1/builds/:id/identification/parts',
    params: idParams,
    body: newHandPart,
    status: 201,
    answer: handPartView,
    run: async (tx, { principal, params, body }) => ({
      body: showHandPart(await addHandPart(tx, principal, params.id, body)),
    }),
  });
  commandRoute(app, deps, {
    operationId: 'namePartInHand',
    tag,
    summary: 'What a part in the hand is called and which arm it is, from now on',
    method: 'POST',
    url: '/api/v1/builds/:id/identification/parts/names',
    params: idParams,
    body: sayHandPart,
    status: 201,
    answer: handPartView,
    run: async (tx, { principal, params, body }) => ({
      body: showHandPart(await nameHandPart(tx, principal, params.id, body)),
    }),
  });
}
