import type { FastifyInstance } from 'fastify';
import { setHold as holding, liftHold as lifting, triage } from '../../shared/schemas/commands.ts';
import { judgedCallView, showCallAfter } from '../assessment/calls/view.ts';
import { liftStop } from '../assessment/stops/lift-stop.ts';
import { recordTriage, setHold } from '../records/calls/hold.ts';
import { commandRoute, idParams } from '../web/api-route.ts';
import type { Deps } from '../web/deps.ts';

/** JSON routes of the first question and of the hold. */
export function holdApi(app: FastifyInstance, deps: Deps): void {
  const tag = 'calls';
  commandRoute(app, deps, {
    operationId: 'recordTriage',
    tag,
    summary: 'Record whether it runs, is apart, and whether anything hit, bent or came loose',
    method: 'PUT',
    url: '/api/v1/calls/:id/triage',
    params: idParams,
    body: triage,
    status: 200,
    answer: judgedCallView,
    run: async (tx, { principal, params, body }) => ({
      body: await showCallAfter(tx, principal, await recordTriage(tx, principal, params.id, body)),
    }),
  });
  commandRoute(app, deps, {
    operationId: 'setHold',
    tag,
    summary: 'Say stop: nobody turns the engine',
    method: 'POST',
    url: '/api/v1/calls/:id/hold',
    params: idParams,
    body: holding,
    status: 200,
    answer: judgedCallView,
    run: async (tx, { principal, params, body }) => ({
      body: await showCallAfter(tx, principal, await setHold(tx, principal, params.id, body.reason)),
    }),
  });
  commandRoute(app, deps, {
    operationId: 'liftHold',
    tag,
    summary: 'Lift the stop, with the reason',
    method: 'POST',
    url: '/api/v1/calls/:id/hold/lift',
    params: idParams,
    body: lifting,
    status: 200,
    answer: judgedCallView,
    run: async (tx, { principal, params, body }) => ({
      body: await showCallAfter(tx, principal, await liftStop(tx, principal, params.id, body.reason)),
    }),
  });
}
