import type { FastifyInstance } from 'fastify';
import { callPages } from './call-pages/pages.ts';
import { photographPages } from './call-pages/photographs/routes.ts';
import { sharePages } from './call-pages/sharing/routes.ts';
import { accountPages } from './desk/account/account-pages.ts';
import { cataloguePages } from './desk/catalogue/pages.ts';
import { homePage } from './desk/home.ts';
import { limitsPages } from './desk/limits/pages.ts';
import { deskPages } from './desk/settings/desk-pages.ts';
import { accessPages } from './desk/sign-in/pages.ts';
import { referencePages } from './reference/routes.ts';
import { identificationPages } from './steps/identify/pages.ts';
import type { Deps } from './web/deps.ts';
import { assetRoutes } from './web/pages/asset-routes.ts';

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
