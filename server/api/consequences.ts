import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import { strikeWorking } from '../../shared/schemas/commands.ts';
import { assessedAs } from '../assessment/assessed.ts';
import { keepConsequences } from '../assessment/consequences/keep.ts';
import { strikeConsequences } from '../assessment/consequences/strike.ts';
import {
  changesView,
  consequencesView,
  showChanges,
  showConsequences,
} from '../assessment/consequences/view.ts';
import { readBuildRecord } from '../records/whole-build/load-build.ts';
import { commandRoute, idParams, noParams, readRoute } from '../web/api-route.ts';
import type { Deps } from '../web/deps.ts';

const keptView = z.object({ seq: z.int(), consequences: consequencesView });

const changesUrl = '/api/v1/builds/:id/consequences';
const callId = z
  .uuid()
  .optional()
  .meta({ description: 'the call whose goal it is for; the newest open one where left out' });
const keepChange = z.strictObject({
  key: z.string().min(1).max(100).meta({ description: 'the key of one of the changes' }),
  callId,
});
const keptChangeView = z.object({ seq: z.int(), consequences: changesView });

const struckView = z.object({ seq: z.int(), line: z.int(), reason: z.string() });

const params = z.strictObject({ id: z.uuid(), setUpId: z.uuid() });
const url = '/api/v1/builds/:id/set-ups/:setUpId/consequences';

/** JSON routes of what a ratio does. */
export function consequencesApi(app: FastifyInstance, deps: Deps): void {
  const tag = 'consequences';
  readRoute(app, deps, {
    operationId: 'listConsequences',
    tag,
    summary:
      'What each ratio does on each valve or side: measured, sold as, or planned with nothing measured',
    url: changesUrl,
    params: idParams,
    query: z.strictObject({ callId }),
    answer: changesView,
    read: async (tx, { principal, params: given, query }) => {
      const record = await readBuildRecord(tx, principal, { buildId: given.id });
      return showChanges(record, assessedAs(principal, record, query.callId));
    },
  });
  commandRoute(app, deps, {
    operationId: 'keepChange',
    tag,
    summary: 'Put the figures of one valve, side or plan on the record, with the limits they were judged by',
    method: 'POST',
    url: changesUrl,
    params: idParams,
    body: keepChange,
    status: 201,
    answer: keptChangeView,
    run: async (tx, { principal, params: { id }, body: { key, callId: call } }) => {
      const of = call === undefined ? { key } : { key, callId: call };
      const { seq, record, assessment } = await keepConsequences(tx, principal, id, of);
      return { body: answer(keptChangeView, { seq, consequences: showChanges(record, assessment) }) };
    },
  });
  commandRoute(app, deps, {
    operationId: 'strikeConsequences',
    tag,
    summary: 'Strike kept figures out by the line they were kept in, with the reason; the line stays',
    method: 'POST',
    url: `${changesUrl}/:line/corrections`,
    params: z.strictObject({ id: z.uuid(), line: z.coerce.number().int().positive() }),
    body: strikeWorking,
    status: 201,
    answer: struckView,
    run: async (tx, { principal, params: { id, line }, body }) => ({
      body: answer(struckView, await strikeConsequences(tx, principal, id, line, body)),
    }),
  });
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
      return showConsequences(record, assessedAs(principal, record), given.setUpId);
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
