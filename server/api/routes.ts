import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import type { Deps } from '../web/deps.ts';
import { addNamedSchemas } from '../web/openapi.ts';
import { accessApi } from './access.ts';
import { assessmentApi } from './assessment.ts';
import { buildsApi } from './builds.ts';
import { callsApi } from './calls.ts';
import { catalogueApi } from './catalogue.ts';
import { consequencesApi } from './consequences.ts';
import { gapScansApi } from './gap-scans.ts';
import { holdApi } from './hold.ts';
import { identificationApi } from './identification.ts';
import { lashLogApi } from './lash-log.ts';
import { limitsApi } from './limits.ts';
import { notesApi } from './notes.ts';
import { photographsApi } from './photographs.ts';
import { readingsApi } from './readings.ts';
import { recordApi } from './record.ts';
import { sharingApi } from './sharing.ts';
import { sheetApi } from './sheet.ts';
import { tipMarksApi } from './tip-marks.ts';
import { workingsApi } from './workings.ts';

/** Every JSON route but the computations. */
export function apiRoutes(app: FastifyInstance, deps: Deps): void {
  const document = { schema: { hide: true, response: { 200: z.looseObject({ openapi: z.string() }) } } };
  app.get('/api/v1/openapi.json', document, () => addNamedSchemas(app.swagger()));
  accessApi(app, deps);
  callsApi(app, deps);
  holdApi(app, deps);
  notesApi(app, deps);
  sharingApi(app, deps);
  catalogueApi(app, deps);
  buildsApi(app, deps);
  assessmentApi(app, deps);
  identificationApi(app, deps);
  readingsApi(app, deps);
  sheetApi(app, deps);
  gapScansApi(app, deps);
  tipMarksApi(app, deps);
  lashLogApi(app, deps);
  consequencesApi(app, deps);
  limitsApi(app, deps);
  recordApi(app, deps);
  photographsApi(app, deps);
  workingsApi(app, deps);
}
