import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import {
  armMarks,
  newArm,
  placeArm,
  reviseBuild as reviseInput,
  chooseUnits as unitsInput,
} from '../../shared/schemas/commands.ts';
import { addArm } from '../records/arms/arms.ts';
import { markArm } from '../records/arms/marks.ts';
import { nowOnValves, placeArmOnValve } from '../records/arms/placements.ts';
import { armView, placementView, showArm, showPlacement } from '../records/arms/view.ts';
import { getBuild } from '../records/builds/builds.ts';
import { listRevisions, reviseBuild } from '../records/builds/revisions.ts';
import { chooseUnits } from '../records/builds/units.ts';
import { buildView, revisionView, showBuild, showRevision } from '../records/builds/view.ts';
import { readBuildRecord } from '../records/whole-build/load-build.ts';
import { commandRoute, idParams, noParams, readRoute } from '../web/api-route.ts';
import type { Deps } from '../web/deps.ts';
import { expectedRevision } from './if-match.ts';

const revisionsView = z.object({ revisions: z.array(revisionView) });
const armsView = z.object({
  arms: z.array(armView),
  now: z.array(placementView),
  placements: z.array(placementView),
});

const armParams = idParams.extend({ armId: z.uuid().meta({ description: 'the arm' }) });

const tag = 'builds';

/** The build, its specification with its revisions, and the units of its calls. */
function specRoutes(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'getBuild',
    tag,
    summary: 'A build as it stands',
    url: '/api/v1/builds/:id',
    params: idParams,
    query: noParams,
    answer: buildView,
    read: async (tx, { principal, params }, reply) => {
      const build = await getBuild(tx, principal, params.id);
      reply.header('etag', `"${build.revision}"`);
      return showBuild(build);
    },
  });
  commandRoute(app, deps, {
    operationId: 'reviseBuild',
    tag,
    summary: 'Keep a new revision of the specification',
    method: 'PUT',
    url: '/api/v1/builds/:id/spec',
    params: idParams,
    body: reviseInput,
    status: 200,
    answer: buildView,
    run: async (tx, { principal, params, body, request }) => {
      const build = await reviseBuild(
        tx,
        principal,
        params.id,
        body,
        expectedRevision(request.headers['if-match']),
      );
      return { body: showBuild(build), etag: `"${build.revision}"` };
    },
  });
  commandRoute(app, deps, {
    operationId: 'chooseUnits',
    tag,
    summary: 'Choose the units of the calls about a build',
    method: 'PUT',
    url: '/api/v1/builds/:id/units',
    params: idParams,
    body: unitsInput,
    status: 200,
    answer: buildView,
    run: async (tx, { principal, params, body }) => ({
      body: showBuild(await chooseUnits(tx, principal, params.id, body.units)),
    }),
  });
  readRoute(app, deps, {
    operationId: 'listRevisions',
    tag,
    summary: 'Every revision of a build',
    url: '/api/v1/builds/:id/revisions',
    params: idParams,
    query: noParams,
    answer: revisionsView,
    read: async (tx, { principal, params }) =>
      answer(revisionsView, {
        revisions: (await listRevisions(tx, principal, params.id)).map(showRevision),
      }),
  });
}

/** Arms, and which of them sits where. */
function armRoutes(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'listArms',
    tag,
    summary: 'Rocker arms of a build, where they sit now, and every swap',
    url: '/api/v1/builds/:id/arms',
    params: idParams,
    query: noParams,
    answer: armsView,
    read: async (tx, { principal, params }) => {
      const { arms, placements } = await readBuildRecord(tx, principal, { buildId: params.id });
      return answer(armsView, {
        arms: arms.map(showArm),
        now: nowOnValves(placements).map(showPlacement),
        placements: placements.map(showPlacement),
      });
    },
  });
  commandRoute(app, deps, {
    operationId: 'addArm',
    tag,
    summary: 'Add a rocker arm with its marks word for word',
    method: 'POST',
    url: '/api/v1/builds/:id/arms',
    params: idParams,
    body: newArm,
    status: 201,
    answer: armView,
    run: async (tx, { principal, params, body }) => ({
      body: showArm(await addArm(tx, principal, params.id, body)),
    }),
  });
  commandRoute(app, deps, {
    operationId: 'markArm',
    tag,
    summary: 'Put the marks of a rocker arm right, or add to them: what is left out stays',
    method: 'POST',
    url: '/api/v1/builds/:id/arms/:armId/marks',
    params: armParams,
    body: armMarks,
    status: 201,
    answer: armView,
    run: async (tx, { principal, params: { id: buildId, armId }, body }) => ({
      body: showArm(await markArm(tx, principal, { buildId, armId }, body)),
    }),
  });
  commandRoute(app, deps, {
    operationId: 'placeArm',
    tag,
    summary: 'Say which arm sits on which valve now',
    method: 'POST',
    url: '/api/v1/builds/:id/placements',
    params: idParams,
    body: placeArm,
    status: 201,
    answer: placementView,
    run: async (tx, { principal, params, body }) => ({
      body: showPlacement(await placeArmOnValve(tx, principal, params.id, body)),
    }),
  });
}

/** JSON routes of builds: specification with revisions, arms, and which arm sits where. */
export function buildsApi(app: FastifyInstance, deps: Deps): void {
  specRoutes(app, deps);
  armRoutes(app, deps);
}
