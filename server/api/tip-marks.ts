import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { correctTipMark, newTipMark } from '../../shared/schemas/tip-mark.ts';
import { assessedAs } from '../assessment/assessed.ts';
import { refuseTurning } from '../assessment/stops/refuse-turning.ts';
import { judgedMarksView, showJudgedMarks } from '../assessment/tip-marks/view.ts';
import { keepTipMark, replaceTipMark } from '../records/tip-marks/tip-marks.ts';
import { showTipMark, tipMarkView } from '../records/tip-marks/view.ts';
import { readBuildRecord } from '../records/whole-build/load-build.ts';
import { commandRoute, idParams, noParams, readRoute } from '../web/api-route.ts';
import type { Deps } from '../web/deps.ts';

const url = '/api/v1/builds/:id/tip-marks';
const tag = 'readings';

/** JSON routes of marks on stem ends. */
export function tipMarksApi(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'listTipMarks',
    tag,
    summary: 'Tip marks, each valve’s set against the least sweep, with what they raise',
    url,
    params: idParams,
    query: noParams,
    answer: judgedMarksView,
    read: async (tx, { principal, params }) => {
      const record = await readBuildRecord(tx, principal, { buildId: params.id });
      return showJudgedMarks(record, assessedAs(principal, record));
    },
  });
  commandRoute(app, deps, {
    operationId: 'keepTipMark',
    tag,
    summary: 'Keep a mark on a stem’s end: its width, its place, and the pushrod it was made with',
    method: 'POST',
    url,
    params: idParams,
    body: newTipMark,
    status: 201,
    answer: tipMarkView,
    run: async (tx, { principal, params, body }) => ({
      body: showTipMark(await keepTipMark(tx, principal, params.id, body, refuseTurning)),
    }),
  });
  commandRoute(app, deps, {
    operationId: 'replaceTipMark',
    tag,
    summary: 'Replace a mark as a whole, or strike it out, with the reason',
    method: 'POST',
    url: `${url}/:markId/corrections`,
    params: z.strictObject({ id: z.uuid(), markId: z.uuid() }),
    body: correctTipMark,
    status: 201,
    answer: tipMarkView,
    run: async (tx, { principal, params, body }) => ({
      body: showTipMark(await replaceTipMark(tx, principal, params.id, params.markId, body)),
    }),
  });
}
