import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { InputFaults } from '../../shared/problems/faults.ts';
import { answer } from '../../shared/schemas/answer.ts';
import { BEFORE_STOP } from '../../shared/schemas/before-stop.ts';
import { strikeWorking as strikeInput } from '../../shared/schemas/commands.ts';
import { someWords } from '../../shared/schemas/texts.ts';
import { refuseTurning } from '../assessment/stops/refuse-turning.ts';
import { requireBuild } from '../auth/principal.ts';
import { showWorking, workingView } from '../records/workings/view.ts';
import { keepWorking, listWorkings, strikeWorking, workOut } from '../records/workings/workings.ts';
import { commandRoute, idParams, noParams, readRoute } from '../web/api-route.ts';
import type { Deps } from '../web/deps.ts';

const workingsView = z.object({ workings: z.array(workingView) });

const newWorking = z.strictObject({
  computation: someWords('name of the computation, as /api/v1/compute lists it', 60),
  inputs: z
    .record(z.string(), z.unknown())
    .meta({ description: 'its inputs, as the computation takes them' }),
  ...BEFORE_STOP,
});

/** Faults of a computation, at the member that holds its inputs. */
function atInputs(error: unknown): never {
  if (!(error instanceof InputFaults)) throw error;
  throw new InputFaults(error.faults.map((fault) => ({ ...fault, pointer: `/inputs${fault.pointer}` })));
}

/** JSON routes of workings: computations kept with a build. */
export function workingsApi(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'listWorkings',
    tag: 'readings',
    summary: 'Computations kept with a build, with what went in',
    url: '/api/v1/builds/:id/workings',
    params: idParams,
    query: noParams,
    answer: workingsView,
    read: async (tx, { principal, params }) =>
      answer(workingsView, { workings: (await listWorkings(tx, principal, params.id)).map(showWorking) }),
  });
  commandRoute(app, deps, {
    operationId: 'keepWorking',
    tag: 'readings',
    summary: 'Compute, and keep inputs and answer with the build',
    method: 'POST',
    url: '/api/v1/builds/:id/workings',
    params: idParams,
    body: newWorking,
    status: 201,
    answer: workingView,
    before: async ({ principal, params, body, request }) => {
      const computation = deps.computations.get(body.computation);
      if (computation === undefined) {
        const fault = {
          pointer: '/computation',
          code: 'not-allowed' as const,
          detail: 'is not a computation of this service',
          received: body.computation,
        };
        throw new InputFaults([fault]);
      }
      requireBuild(principal, params.id, 'write');
      await deps.computeLimits.take(request.ip);
      const spent = (ms: number) => deps.computeLimits.charge(request.ip, ms);
      const made = await workOut(computation, body.inputs, (inputs) =>
        deps.work.answer(computation, inputs, 'inch', spent, 'engine'),
      ).catch(atInputs);
      return async (tx) => ({
        body: showWorking((await keepWorking(tx, principal, params.id, made, refuseTurning)).working),
      });
    },
  });
  commandRoute(app, deps, {
    operationId: 'strikeWorking',
    tag: 'readings',
    summary: 'Strike a kept computation out, with the reason; the assessment goes on without it',
    method: 'POST',
    url: '/api/v1/builds/:id/workings/:workingId/corrections',
    params: z.strictObject({ id: z.uuid(), workingId: z.uuid() }),
    body: strikeInput,
    status: 201,
    answer: workingView,
    run: async (tx, { principal, params, body }) => ({
      body: showWorking(await strikeWorking(tx, principal, params.id, params.workingId, body)),
    }),
  });
}
