import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import { correctGapScan, newGapScan, pasteGapScan } from '../../shared/schemas/gap-scan.ts';
import { assessed, callMeant } from '../assessment/assessed.ts';
import { lookedScan } from '../assessment/gap-scans/looked.ts';
import {
  judgedScansView,
  judgedScanView,
  showJudgedScan,
  showJudgedScans,
} from '../assessment/gap-scans/view.ts';
import { refuseTurning } from '../assessment/stops/refuse-turning.ts';
import { assessedQuestionView, showQuestion } from '../assessment/view/question.ts';
import { keepGapScan, replaceGapScan, scanOfText } from '../records/gap-scans/gap-scans.ts';
import { readScanRows } from '../records/gap-scans/scan-rows.ts';
import { gapScanView, scanReadingView, showGapScan, showScanReading } from '../records/gap-scans/view.ts';
import { loadBuildRecord, readBuildRecord } from '../records/whole-build/load-build.ts';
import { commandRoute, idParams, noParams, readRoute } from '../web/api-route.ts';
import type { Deps } from '../web/deps.ts';

const url = '/api/v1/builds/:id/gap-scans';
const tag = 'sheet';

const lookView = z.object({
  kept: gapScanView.optional(),
  readings: z.array(scanReadingView),
  judged: judgedScanView.optional().meta({ description: 'what is said of it, or would be' }),
  questions: z.array(assessedQuestionView).meta({ description: 'what it is asked, or would be' }),
  faults: z.array(z.object({ line: z.int(), column: z.string(), detail: z.string(), received: z.string() })),
});

function pasteRoute(app: FastifyInstance, deps: Deps): void {
  commandRoute(app, deps, {
    operationId: 'pasteGapScan',
    tag,
    summary: 'Look at rows of crank angle and gap, or keep them as a scan',
    method: 'POST',
    url: `${url}/paste`,
    params: idParams,
    body: pasteGapScan,
    status: 200,
    answer: lookView,
    run: async (tx, { principal, params, body }) => {
      const rows = readScanRows(body.text, body.unit);
      const record = await loadBuildRecord(tx, principal, { buildId: params.id }, { access: 'write' });
      const { detail, questions } = lookedScan(record, callMeant(record), body, rows);
      const kept = body.keep
        ? showGapScan(await keepGapScan(tx, principal, params.id, scanOfText(body), refuseTurning))
        : undefined;
      return {
        body: answer(lookView, {
          kept,
          readings: rows.readings.map(showScanReading),
          judged: detail === undefined ? undefined : showJudgedScan(detail),
          questions: questions.map(showQuestion),
          faults: rows.faults,
        }),
      };
    },
  });
}

/** JSON routes of scans of piston to valve over the crank. */
export function gapScansApi(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'listGapScans',
    tag,
    summary: 'Scans of piston to valve over the crank, each with its least, its word and what it is asked',
    url,
    params: idParams,
    query: noParams,
    answer: judgedScansView,
    read: async (tx, { principal, params }) => {
      const record = await readBuildRecord(tx, principal, { buildId: params.id });
      return showJudgedScans(record, assessed(record));
    },
  });
  commandRoute(app, deps, {
    operationId: 'keepGapScan',
    tag,
    summary: 'Keep a scan of one valve: gaps at one crank angle after another',
    method: 'POST',
    url,
    params: idParams,
    body: newGapScan,
    status: 201,
    answer: gapScanView,
    run: async (tx, { principal, params, body }) => ({
      body: showGapScan(await keepGapScan(tx, principal, params.id, body, refuseTurning)),
    }),
  });
  pasteRoute(app, deps);
  commandRoute(app, deps, {
    operationId: 'replaceGapScan',
    tag,
    summary: 'Put a scan right, member by member: what is left out stays; or strike it out, with the reason',
    method: 'POST',
    url: `${url}/:scanId/corrections`,
    params: z.strictObject({ id: z.uuid(), scanId: z.uuid() }),
    body: correctGapScan,
    status: 201,
    answer: gapScanView,
    run: async (tx, { principal, params, body }) => ({
      body: showGapScan(await replaceGapScan(tx, principal, params.id, params.scanId, body)),
    }),
  });
}
