import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { assessed } from '../assessment/assessed.ts';
import { noiseView, showNoise } from '../assessment/noise/view.ts';
import { readBuildRecord } from '../records/whole-build/load-build.ts';
import { idParams, readRoute } from '../web/api-route.ts';
import type { Deps } from '../web/deps.ts';

const query = z.strictObject({
  callId: z
    .uuid()
    .optional()
    .meta({ description: 'the call whose goal it is for; the newest open one where left out' }),
});

/** JSON route of what noise or a failure may come of; its questions are answered as all questions are. */
export function noiseApi(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'getNoise',
    tag: 'readings',
    summary:
      'What noise, a loosening adjuster or a failure may come of: questions, causes, what tells them apart',
    url: '/api/v1/builds/:id/noise',
    params: idParams,
    query,
    answer: noiseView,
    read: async (tx, { principal, params, query: { callId } }) =>
      showNoise(assessed(await readBuildRecord(tx, principal, { buildId: params.id }), callId)),
  });
}
