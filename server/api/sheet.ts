import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import { correctSheetReading, newSheetReadings, pasteSheet } from '../../shared/schemas/sheet.ts';
import { keysOf, VALVES } from '../../shared/schemas/words.ts';
import { assessedAs, callMeant } from '../assessment/assessed.ts';
import { type PastedQuestion, questionsOfPasted } from '../assessment/sheet/pasted.ts';
import { type PushedQuestion, questionsOfKept, questionsOfRefused } from '../assessment/sheet/pushed.ts';
import { sheetView } from '../assessment/sheet/sheet-schema.ts';
import { showSheet } from '../assessment/sheet/view.ts';
import { refuseTurning } from '../assessment/stops/refuse-turning.ts';
import { assessedQuestionView, questionFields } from '../assessment/view/question.ts';
import { keepPasted, lookAtPasted, textFaults } from '../records/sheet/paste-sheet.ts';
import { replaceSheetReading } from '../records/sheet/replace-reading.ts';
import { keepSheetReadings } from '../records/sheet/sheet-readings.ts';
import { sheetReadingView, showSheetReading } from '../records/sheet/view.ts';
import { loadBuildRecord, readBuildRecord } from '../records/whole-build/load-build.ts';
import { commandRoute, idParams, readRoute } from '../web/api-route.ts';
import type { Deps } from '../web/deps.ts';
import { revisionMatched } from './if-match.ts';

const url = '/api/v1/builds/:id/sheet';
const tag = 'sheet';

const pushedView = z.object({
  ...assessedQuestionView.shape,
  rows: z.array(z.int()).meta({ description: 'places in the list of readings that it is about, from 0' }),
});
const keptView = z.object({
  kept: z.array(sheetReadingView),
  questions: z.array(pushedView).meta({ description: 'what these readings are asked' }),
});
const seenView = z.object({
  line: z.int(),
  cylinder: z.int(),
  valve: z.enum(keysOf(VALVES)),
  kind: z.string(),
  readAs: z.string(),
  already: z.string().meta({ description: 'what is on record of the same thing already' }).optional(),
});
const showPushed = ({ question, rows }: PushedQuestion) =>
  answer(pushedView, { ...questionFields(question), rows });
const askedView = z.object({
  ...assessedQuestionView.shape,
  lines: z.array(z.int()).meta({ description: 'lines of the text that it is about' }),
});
const showAsked = ({ question, lines }: PastedQuestion) =>
  answer(askedView, { ...questionFields(question), lines });
const lookView = z.object({
  kept: z.array(sheetReadingView),
  readings: z.array(seenView),
  questions: z.array(askedView).meta({ description: 'what these readings are asked, or would be' }),
  faults: z.array(z.object({ line: z.int(), column: z.string(), detail: z.string(), received: z.string() })),
});

function pasteRoute(app: FastifyInstance, deps: Deps): void {
  commandRoute(app, deps, {
    operationId: 'pasteSheet',
    tag,
    summary: 'Look at rows of a spreadsheet, or keep all of them',
    method: 'POST',
    url: `${url}/paste`,
    params: idParams,
    body: pasteSheet,
    status: 200,
    answer: lookView,
    run: async (tx, { principal, params, body }) => {
      const look = await lookAtPasted(tx, principal, params.id, body);
      const readings = look.readings.map((each) =>
        answer(seenView, {
          line: each.line,
          cylinder: each.cylinder,
          valve: each.valve,
          kind: each.kind,
          readAs: each.reading.readAs,
          already: each.already,
        }),
      );
      const record = await loadBuildRecord(tx, principal, { buildId: params.id }, { access: 'write' });
      const questions = questionsOfPasted(record, callMeant(record), body, look).map(showAsked);
      if (!body.keep)
        return { body: answer(lookView, { kept: [], readings, questions, faults: look.faults }) };
      const done = await keepPasted(tx, principal, params.id, body, refuseTurning);
      if (!('kept' in done)) throw textFaults(done.faults);
      return {
        body: answer(lookView, { kept: done.kept.map(showSheetReading), readings, questions, faults: [] }),
      };
    },
    asked: async (tx, { principal, params, body }) => {
      const read = pasteSheet.safeParse(body);
      if (!read.success) return [];
      const look = await lookAtPasted(tx, principal, params.id, read.data);
      const record = await loadBuildRecord(tx, principal, { buildId: params.id }, { access: 'write' });
      return questionsOfPasted(record, callMeant(record), read.data, look).map(showAsked);
    },
  });
}

/** JSON routes of the per-valve sheet. */
export function sheetApi(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'getSheet',
    tag,
    summary: 'The per-valve sheet: figures, ratios, odd valves, and what the swaps decide',
    url,
    params: idParams,
    query: z.strictObject({ order: z.enum(['firing', 'bank']).default('firing') }),
    answer: sheetView,
    read: async (tx, { principal, params, query }) => {
      const record = await readBuildRecord(tx, principal, { buildId: params.id });
      return showSheet(record, assessedAs(principal, record), query.order);
    },
  });
  commandRoute(app, deps, {
    operationId: 'keepSheetReadings',
    tag,
    summary: 'Keep readings of several valves that were taken the same way',
    method: 'POST',
    url,
    params: idParams,
    body: newSheetReadings,
    status: 201,
    answer: keptView,
    run: async (tx, { principal, params, body, request }) => {
      const expected = revisionMatched(request.headers['if-match']);
      const kept = await keepSheetReadings(tx, principal, params.id, body, refuseTurning, expected);
      const questions = await questionsOfKept(tx, principal, params.id, kept);
      return {
        body: answer(keptView, { kept: kept.map(showSheetReading), questions: questions.map(showPushed) }),
      };
    },
    asked: async (tx, { principal, params, body }) =>
      (await questionsOfRefused(tx, principal, params.id, body)).map(showPushed),
  });
  pasteRoute(app, deps);
  commandRoute(app, deps, {
    operationId: 'replaceSheetReading',
    tag,
    summary: 'Replace a reading of the sheet, or strike it out, with the reason',
    method: 'POST',
    url: `${url}/readings/:readingId/corrections`,
    params: z.strictObject({ id: z.uuid(), readingId: z.uuid() }),
    body: correctSheetReading,
    status: 201,
    answer: sheetReadingView,
    run: async (tx, { principal, params, body }) => ({
      body: showSheetReading(await replaceSheetReading(tx, principal, params.id, params.readingId, body)),
    }),
  });
}
