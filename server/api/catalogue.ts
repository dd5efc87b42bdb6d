import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import { FILE_BODY, importCatalogue } from '../../shared/schemas/catalogue.ts';
import { exportCatalogue } from '../records/catalogue/export.ts';
import { getFamily, listFamilies } from '../records/catalogue/families.ts';
import { loadCatalogue } from '../records/catalogue/import.ts';
import { familyView, loadedView, showFamily, showLoaded } from '../records/catalogue/view.ts';
import { commandRoute, idParams, noParams, readRoute } from '../web/api-route.ts';
import type { Deps } from '../web/deps.ts';

const familiesView = z.object({ families: z.array(familyView), next: z.string().optional() });
const fileView = z.object({ csv: z.string() });

const listQuery = z.strictObject({
  search: z.string().max(200).optional().meta({ description: 'words in code, name, what it fits, notes' }),
  after: z.string().max(60).optional().meta({ description: 'code of the last family of the page before' }),
  limit: z.coerce.number().int().min(1).max(200).default(50),
});

/** JSON routes of the catalogue: families, loading them from a file, and the file again. */
export function catalogueApi(app: FastifyInstance, deps: Deps): void {
  const tag = 'catalogue';
  readRoute(app, deps, {
    operationId: 'listFamilies',
    tag,
    summary: 'Part families of the shop, by code',
    url: '/api/v1/catalogue',
    params: noParams,
    query: listQuery,
    answer: familiesView,
    read: async (tx, { principal, query }) => {
      const families = await listFamilies(tx, principal, query);
      const last = families.length === query.limit ? families.at(-1)?.code : undefined;
      return answer(familiesView, { families: families.map(showFamily), next: last });
    },
  });
  readRoute(app, deps, {
    operationId: 'getFamily',
    tag,
    summary: 'One part family',
    url: '/api/v1/catalogue/:id',
    params: idParams,
    query: noParams,
    answer: familyView,
    read: async (tx, { principal, params }) => showFamily(await getFamily(tx, principal, params.id)),
  });
  commandRoute(app, deps, {
    operationId: 'loadCatalogue',
    tag,
    summary: 'Load part families from a CSV file: dry run, all or nothing, or the rows without a fault',
    method: 'POST',
    url: '/api/v1/catalogue/loads',
    params: noParams,
    body: importCatalogue,
    bodyLimit: FILE_BODY,
    status: 200,
    answer: loadedView,
    run: async (tx, { principal, body }) => ({
      body: showLoaded(await loadCatalogue(tx, principal, body, deps.now())),
    }),
  });
  readRoute(app, deps, {
    operationId: 'exportCatalogue',
    tag,
    summary: 'The catalogue as a CSV file, which loaded again changes nothing',
    url: '/api/v1/catalogue/file',
    params: noParams,
    query: noParams,
    answer: fileView,
    read: async (tx, { principal }) => answer(fileView, { csv: await exportCatalogue(tx, principal) }),
  });
}
