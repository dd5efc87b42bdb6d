import type { FastifyInstance } from 'fastify';
import { accountPages } from '../access/account-pages.ts';
import { deskPages } from '../access/desk-pages.ts';
import { accessPages } from '../access/pages.ts';
import { callPages } from '../calls/pages.ts';
import { cataloguePages } from '../catalogue/pages.ts';
import type { Deps } from '../deps.ts';
import { referencePages } from '../reference/routes.ts';
import { assetRoutes } from './asset-routes.ts';
import { homePage } from './home.ts';

/** Every page. */
export function pageRoutes(app: FastifyInstance, deps: Deps): void {
  assetRoutes(app, deps);
  homePage(app, deps);
  accessPages(app, deps);
  accountPages(app, deps);
  deskPages(app, deps);
  callPages(app, deps);
  cataloguePages(app, deps);
  referencePages(app, deps);
}
