import type { FastifyInstance } from 'fastify';
import { callPages } from './call-pages/pages.ts';
import { accountPages } from './desk/account/account-pages.ts';
import { callListPages } from './desk/calls/pages.ts';
import { cataloguePages } from './desk/catalogue/pages.ts';
import { homePage } from './desk/home.ts';
import { limitsPages } from './desk/limits/pages.ts';
import { deskPages } from './desk/settings/desk-pages.ts';
import { accessPages } from './desk/sign-in/pages.ts';
import { referencePages } from './reference/routes.ts';
import { CALL_STEPS } from './steps/index.ts';
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
  callListPages(app, deps);
  callPages(app, deps, CALL_STEPS);
  cataloguePages(app, deps);
  referencePages(app, deps);
}
