import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { assessedAs } from '../assessment/assessed.ts';
import { assessmentView, showAssessment } from '../assessment/view/assessment.ts';
import { readBuildRecord } from '../records/whole-build/load-build.ts';
import { idParams, readRoute } from '../web/api-route.ts';
import type { Deps } from '../web/deps.ts';

const query = z.strictObject({
  callId: z
    .uuid()
    .optional()
    .meta({ description: 'the call whose goal it is for; the newest open one where left out' }),
});

/** JSON route of everything that is said about a build. */
export function assessmentApi(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'getAssessment',
    tag: 'builds',
    summary: 'All that is said about a build: answers, judgements, questions, stops, and what is next',
    url: '/api/v1/builds/:id/assessment',
    params: idParams,
    query,
    answer: assessmentView,
    read: async (tx, { principal, params, query: { callId } }) =>
      showAssessment(
        assessedAs(principal, await readBuildRecord(tx, principal, { buildId: params.id }), callId),
      ),
  });
}
