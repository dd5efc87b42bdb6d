import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import { changeLimits as changeInput } from '../../shared/schemas/limits.ts';
import { changeLimits, listLimits } from '../records/limits/limits.ts';
import { limitView, showLimit } from '../records/limits/view.ts';
import { commandRoute, noParams, readRoute } from '../web/api-route.ts';
import type { Deps } from '../web/deps.ts';

const limitsView = z.object({ limits: z.array(limitView) });

/** JSON routes of a shop's limits. */
export function limitsApi(app: FastifyInstance, deps: Deps): void {
  const tag = 'limits';
  readRoute(app, deps, {
    operationId: 'listLimits',
    tag,
    summary: 'The limits that count in this shop, each with its source',
    url: '/api/v1/limits',
    params: noParams,
    query: noParams,
    answer: limitsView,
    read: async (tx, { principal }) =>
      answer(limitsView, { limits: (await listLimits(tx, principal)).map(showLimit) }),
  });
  commandRoute(app, deps, {
    operationId: 'changeLimits',
    tag,
    summary: 'Set limits of this shop; those not named stay as they are',
    method: 'PUT',
    url: '/api/v1/limits',
    params: noParams,
    body: changeInput,
    status: 200,
    answer: limitsView,
    run: async (tx, { principal, body }) => ({
      body: answer(limitsView, {
        limits: (await changeLimits(tx, principal, body.limits)).map(showLimit),
      }),
    }),
  });
}
