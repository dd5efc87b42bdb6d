import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { changeLimits as changeInput } from '../../shared/schemas/limits.ts';
import type { Limit } from '../records/limits/known-limits.ts';
import { changeLimits, listLimits } from '../records/limits/limits.ts';
import { commandRoute, noParams, readRoute } from '../web/api-route.ts';
import type { Deps } from '../web/deps.ts';
import { quantityView } from './views.ts';

const limitView = z
  .object({
    name: z.string(),
    title: z.string(),
    value: quantityView,
    source: z.string(),
    revision: z.int().meta({ description: '0 for the default that comes with the service' }),
    by: z.string().optional(),
    at: z.iso.datetime().optional(),
  })
  .meta({ id: 'Limit' });

const limitsView = z.object({ limits: z.array(limitView) });

function showLimit({ by, at, value, ...rest }: Limit): z.output<typeof limitView> {
  return {
    ...rest,
    value: { value: value.value, unit: value.unit },
    ...(by === undefined ? {} : { by }),
    ...(at === undefined ? {} : { at: at.toISOString() }),
  };
}

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
    read: async (tx, { principal }) => ({ limits: (await listLimits(tx, principal)).map(showLimit) }),
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
      body: { limits: (await changeLimits(tx, principal, body.limits)).map(showLimit) },
    }),
  });
}
