import type { FastifyInstance } from 'fastify';
import { accountPages } from '../access/account-pages.ts';
import { deskPages } from '../access/desk-pages.ts';
import { accessPages } from '../access/pages.ts';
import { callPages } from '../calls/pages.ts';
import { cataloguePages } from '../catalogue/pages.ts';
import type { Deps } from '../deps.ts';
import { identificationPages } from '../identification/pages.ts';
import { limitsPages } from '../limits/pages.ts';
import { photographPages } from '../photographs/pages.ts';
import { referencePages } from '../reference/routes.ts';
import { sharePages } from '../sharing/pages.ts';
import { assetRoutes } from './asset-routes.ts';
import { homePage } from './home.ts';

/** Every page. */
export function pageRoutes(app: FastifyInstance, deps: Deps): void {
  assetRoutes(app, deps);
  homePage(app, deps);
  accessPages(app, deps);
  accountPages(app, deps);
  deskPages(app, deps);
  limitsPages(app, deps);
  callPages(app, deps);
  sharePages(app, deps);
  cataloguePages(app, deps);
  identificationPages(app, deps);
  photographPages(app, deps);
  referencePages(app, deps);
}
