import type { FastifyInstance } from 'fastify';
import { InputFaults } from '../../../shared/problems/faults.ts';
import { FILE_BODY, importCatalogue } from '../../../shared/schemas/catalogue.ts';
import { Failure } from '../../problems/failure.ts';
import { exportCatalogue } from '../../records/catalogue/export.ts';
import { loadCatalogue } from '../../records/catalogue/import.ts';
import type { Deps } from '../../web/deps.ts';
import { postForm } from '../../web/form-route.ts';
import { FRESH } from '../../web/forms/fields.ts';
import { getPage } from '../../web/page-route.ts';
import { pagePrincipal } from '../../web/principals.ts';
import { familyPage } from './family-page.ts';
import { cataloguePage } from './list-page.ts';
import { loadFaults, loadPage } from './load-page.ts';

/** What is wrong with a file that was not even looked into. */
const wrongFile = (csv = '', issues: readonly { readonly message: string }[]): string =>
  csv === '' ? 'must have a header and at least one row' : issues.map(({ message }) => message).join('; ');

/** Pages of the catalogue: finding a family, one family, and loading a file. */
export function cataloguePages(app: FastifyInstance, deps: Deps): void {
  getPage(app, deps, { url: '/catalogue', side: 'desk', page: cataloguePage });
  getPage(app, deps, { url: '/catalogue/:familyId', side: 'desk', page: familyPage });
  getPage(app, deps, {
    url: '/catalogue/load',
    side: 'desk',
    page: (tx, req) => loadPage(tx, req, FRESH),
  });
  postForm(app, deps, {
    url: '/catalogue/load',
    side: 'desk',
    bodyLimit: FILE_BODY,
    page: (tx, req, rejected) => loadPage(tx, req, rejected ?? FRESH),
    run: async (tx, { principal, fields }) => {
      const read = importCatalogue.safeParse({ csv: fields.csv ?? '', partial: fields.do === 'partial' });
      if (!read.success)
        return {
          faults: [{ field: 'csv', detail: wrongFile(fields.csv, read.error.issues) }],
          typed: fields,
        };
      // A dry run changes nothing: it is answered as the page again, with what the file would do.
      if (fields.do === 'try') return { faults: [], typed: fields };
      try {
        const done = await loadCatalogue(tx, principal, read.data, deps.now());
        const { added, changed, unchanged, faults } = done;
        return {
          goTo: `/catalogue?added=${added}&changed=${changed}&unchanged=${unchanged}&left=${new Set(faults.map(({ row }) => row)).size}`,
        };
      } catch (error) {
        if (error instanceof InputFaults) return { faults: loadFaults(error), typed: fields };
        throw error;
      }
    },
  });
  app.get('/catalogue/file', { schema: { hide: true } }, async (request, reply) => {
    const principal = await pagePrincipal(request, deps, 'desk');
    if (principal === undefined) throw new Failure('sign-in-required', 'sign in first');
    const csv = await deps.db.shopTransaction(principal.shopId, (tx) => exportCatalogue(tx, principal));
    return reply
      .headers({
        'content-type': 'text/csv; charset=utf-8; header=present',
        'content-disposition': 'attachment; filename="catalogue.csv"',
        'cache-control': 'no-store',
      })
      .send(csv);
  });
}
