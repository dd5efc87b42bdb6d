import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { answer, type Sent } from '../../shared/schemas/answer.ts';
import { answerQuestion, correctReading, newReading } from '../../shared/schemas/commands.ts';
import { correctSetUp, newSetUp } from '../../shared/schemas/method.ts';
import { refuseUnknownAnswer } from '../assessment/answers/own-code.ts';
import {
  explanationOfSetUp,
  explanationView,
  ratioOfSetUp,
  ratioView,
  throughLiftOfSetUp,
  throughLiftView,
} from '../assessment/ratio-view.ts';
import { refuseTurning } from '../assessment/stops/refuse-turning.ts';
import { keepAnswer } from '../records/answers/answers.ts';
import { keptAnswerView, showKeptAnswer } from '../records/answers/view.ts';
import { keepReading, listReadings, replaceReading } from '../records/readings/readings.ts';
import { readingView, showReading } from '../records/readings/view.ts';
import { putSetUpRight } from '../records/set-ups/put-right.ts';
import { listSetUps, startSetUp } from '../records/set-ups/set-ups.ts';
import { setUpView, showSetUp } from '../records/set-ups/view.ts';
import type { BuildRecord } from '../records/whole-build/build-record.ts';
import { readBuildRecord } from '../records/whole-build/load-build.ts';
import { commandRoute, idParams, noParams, readRoute } from '../web/api-route.ts';
import type { Deps } from '../web/deps.ts';

const setUpsView = z.object({ setUps: z.array(setUpView) });
const readingsView = z.object({ readings: z.array(readingView) });

const setUpParams = z.strictObject({ id: z.uuid(), setUpId: z.uuid() });

const tag = 'readings';

/** Set-ups as they were begun and put right. */
function setUpRoutes(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'listSetUps',
    tag,
    summary: 'Set-ups of a build',
    url: '/api/v1/builds/:id/set-ups',
    params: idParams,
    query: noParams,
    answer: setUpsView,
    read: async (tx, { principal, params }) =>
      answer(setUpsView, { setUps: (await listSetUps(tx, principal, params.id)).map(showSetUp) }),
  });
  commandRoute(app, deps, {
    operationId: 'startSetUp',
    tag,
    summary: 'Start a set-up: which valve, and how it is measured',
    method: 'POST',
    url: '/api/v1/builds/:id/set-ups',
    params: idParams,
    body: newSetUp,
    status: 201,
    answer: setUpView,
    run: async (tx, { principal, params, body }) => {
      const setUp = await startSetUp(tx, principal, params.id, body, refuseTurning);
      return { body: showSetUp(setUp), location: `/api/v1/builds/${params.id}/set-ups/${setUp.id}/ratio` };
    },
  });
  commandRoute(app, deps, {
    operationId: 'putSetUpRight',
    tag,
    summary:
      'Put a set-up right, member by member: how it was read, or on which valve; what is left out stays, and it holds for the readings already there',
    method: 'POST',
    url: '/api/v1/builds/:id/set-ups/:setUpId/corrections',
    params: setUpParams,
    body: correctSetUp,
    status: 201,
    answer: setUpView,
    run: async (tx, { principal, params, body }) => ({
      body: showSetUp(await putSetUpRight(tx, principal, params.id, params.setUpId, body)),
    }),
  });
}

/** What is said of a set-up, from the whole record of its build. */
function ratioRoutes(app: FastifyInstance, deps: Deps): void {
  const ofSetUp = <A extends z.ZodObject>(said: {
    readonly operationId: string;
    readonly summary: string;
    readonly path: string;
    readonly answer: A;
    show(record: BuildRecord, setUpId: string): Sent<z.output<A>>;
  }) =>
    readRoute(app, deps, {
      operationId: said.operationId,
      tag,
      summary: said.summary,
      url: `/api/v1/builds/:id/set-ups/:setUpId/${said.path}`,
      params: setUpParams,
      query: noParams,
      answer: said.answer,
      read: async (tx, { principal, params }) =>
        said.show(await readBuildRecord(tx, principal, { buildId: params.id }), params.setUpId),
    });
  ofSetUp({
    operationId: 'getRatio',
    summary: 'The ratio of a set-up: interval, budget, verdicts, and what must be asked',
    path: 'ratio',
    answer: ratioView,
    show: ratioOfSetUp,
  });
  ofSetUp({
    operationId: 'getRatioThroughLift',
    summary: 'Ratio, lash left in and give of the train from lifts read part of the way up',
    path: 'ratio-through-lift',
    answer: throughLiftView,
    show: throughLiftOfSetUp,
  });
  ofSetUp({
    operationId: 'explainReadings',
    summary:
      'What would explain the readings of a set-up’s valve, how likely each is, and the next reading worth taking',
    path: 'explanation',
    answer: explanationView,
    show: explanationOfSetUp,
  });
}

/** Passes, and what is put right of them. */
function passRoutes(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'listReadings',
    tag,
    summary: 'Every reading of a build, replaced ones included',
    url: '/api/v1/builds/:id/readings',
    params: idParams,
    query: noParams,
    answer: readingsView,
    read: async (tx, { principal, params }) =>
      answer(readingsView, { readings: (await listReadings(tx, principal, params.id)).map(showReading) }),
  });
  commandRoute(app, deps, {
    operationId: 'keepReading',
    tag,
    summary: 'Keep a reading of a pass',
    method: 'POST',
    url: '/api/v1/builds/:id/set-ups/:setUpId/readings',
    params: setUpParams,
    body: newReading,
    status: 201,
    answer: readingView,
    run: async (tx, { principal, params, body }) => ({
      body: showReading(await keepReading(tx, principal, params.id, params.setUpId, body, refuseTurning)),
    }),
  });
  commandRoute(app, deps, {
    operationId: 'replaceReading',
    tag,
    summary: 'Replace a reading as a whole, say what it was of, or strike it out, with the reason',
    method: 'POST',
    url: '/api/v1/builds/:id/readings/:readingId/corrections',
    params: z.strictObject({ id: z.uuid(), readingId: z.uuid() }),
    body: correctReading,
    status: 201,
    answer: readingView,
    run: async (tx, { principal, params, body }) => ({
      body: showReading(await replaceReading(tx, principal, params.id, params.readingId, body)),
    }),
  });
}

/** What a person found when a question was put to them. */
function answerRoute(app: FastifyInstance, deps: Deps): void {
  commandRoute(app, deps, {
    operationId: 'answerQuestion',
    tag,
    summary: 'Keep what a person found when a question was put to them',
    method: 'POST',
    url: '/api/v1/builds/:id/answers',
    params: idParams,
    body: answerQuestion,
    status: 201,
    answer: keptAnswerView,
    run: async (tx, { principal, params, body }) => {
      await refuseUnknownAnswer(tx, principal, params.id, body);
      return { body: showKeptAnswer(await keepAnswer(tx, principal, params.id, body)) };
    },
  });
}

/** JSON routes of measuring: set-ups, readings, corrections, the ratio with its questions, answers. */
export function readingsApi(app: FastifyInstance, deps: Deps): void {
  setUpRoutes(app, deps);
  passRoutes(app, deps);
  ratioRoutes(app, deps);
  answerRoute(app, deps);
}
