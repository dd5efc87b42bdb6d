import type { FastifyInstance } from 'fastify';
import { accessApi } from '../access/api.ts';
import { buildsApi } from '../builds/api.ts';
import { callsApi } from '../calls/api.ts';
import { holdApi } from '../calls/hold-api.ts';
import { catalogueApi } from '../catalogue/api.ts';
import { consequencesApi } from '../consequences/api.ts';
import type { Deps } from '../deps.ts';
import { addNamedSchemas } from '../http/openapi.ts';
import { identificationApi } from '../identification/api.ts';
import { lashLogApi } from '../lash-log/api.ts';
import { limitsApi } from '../limits/api.ts';
import { notesApi } from '../notes/api.ts';
import { photographsApi } from '../photographs/api.ts';
import { readingsApi } from '../readings/api.ts';
import { recordApi } from '../record/api.ts';
import { sharingApi } from '../sharing/api.ts';
import { sheetApi } from '../sheet/api.ts';
import { tipMarksApi } from '../tip-marks/api.ts';
import { workingsApi } from '../workings/api.ts';

/** Every JSON route but the computations. */
export function apiRoutes(app: FastifyInstance, deps: Deps): void {
  app.get('/api/v1/openapi.json', { schema: { hide: true } }, () => addNamedSchemas(app.swagger()));
  accessApi(app, deps);
  callsApi(app, deps);
  holdApi(app, deps);
  notesApi(app, deps);
  sharingApi(app, deps);
  catalogueApi(app, deps);
  buildsApi(app, deps);
  identificationApi(app, deps);
  readingsApi(app, deps);
  sheetApi(app, deps);
  tipMarksApi(app, deps);
  lashLogApi(app, deps);
  consequencesApi(app, deps);
  limitsApi(app, deps);
  recordApi(app, deps);
  photographsApi(app, deps);
  workingsApi(app, deps);
}
