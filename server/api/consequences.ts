import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import { assessed } from '../assessment/assessed.ts';
import { keepConsequences } from '../assessment/consequences/keep.ts';
import { consequencesView, showConsequences } from '../assessment/consequences/view.ts';
import { readBuildRecord } from '../records/whole-build/load-build.ts';
import { commandRoute, noParams, readRoute } from '../web/api-route.ts';
import type { Deps } from '../web/deps.ts';

const keptView = z.object({ seq: z.int(), consequences: consequencesView });

const params = z.strictObject({ id: z.uuid(), setUpId: z.uuid() });
const url = '/api/v1/builds/:id/set-ups/:setUpId/consequences';

/** JSON routes of what a ratio does. */
export function consequencesApi(app: FastifyInstance, deps: Deps): void {
  const tag = 'consequences';
  readRoute(app, deps, {
    operationId: 'getConsequences',
    tag,
    summary: 'What a ratio does on the valve of a set-up: lifts, loads and gaps before and after',
    url,
    params,
    query: noParams,
    answer: consequencesView,
    read: async (tx, { principal, params: given }) => {
      const record = await readBuildRecord(tx, principal, { buildId: given.id });
      return showConsequences(record, assessed(record), given.setUpId);
    },
  });
  commandRoute(app, deps, {
    operationId: 'keepConsequences',
    tag,
    summary: 'Put the figures on the record, with the limits they were judged by',
    method: 'POST',
    url,
    params,
    body: noParams,
    status: 201,
    answer: keptView,
    run: async (tx, { principal, params: { id, setUpId } }) => {
      const { seq, record, assessment } = await keepConsequences(tx, principal, id, { setUpId });
      return {
        body: answer(keptView, { seq, consequences: showConsequences(record, assessment, setUpId) }),
      };
    },
  });
}
