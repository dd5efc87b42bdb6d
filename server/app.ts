import cookie from '@fastify/cookie';
import formbody from '@fastify/formbody';
import swagger from '@fastify/swagger';
import Fastify, { type FastifyInstance, LogController } from 'fastify';
import { computeRoutes } from './api/compute.ts';
import { apiRoutes } from './api/routes.ts';
import { liveRoutes } from './live/routes.ts';
import { pageRoutes } from './routes.ts';
import { checkAnswers } from './web/check-answers.ts';
import type { Deps } from './web/deps.ts';
import { healthRoutes } from './web/health-routes.ts';
import { bodyKinds } from './web/http/body-kinds.ts';
import { answerBrokenRequest, frameworkErrors } from './web/http/broken-requests.ts';
import { cleanAddress } from './web/http/clean-address.ts';
import { draining } from './web/http/draining.ts';
import { forwarded } from './web/http/forwarded.ts';

import { jsonBodies } from './web/http/json-bodies.ts';
import { problems } from './web/http/problems.ts';
import { type LogStream, requestLog } from './web/http/request-log.ts';
import { sameSite } from './web/http/same-site.ts';
import { securityHeaders } from './web/http/security-headers.ts';
import { describeRoute } from './web/openapi.ts';
import { pageError } from './web/pages/error-page.ts';
import { pageViews } from './web/pages/views.ts';
import { openingCookie } from './web/principals.ts';
import { leaveUnchecked } from './web/validate.ts';
import { parseJson } from './work/json-body.ts';

/** Many times any entry by hand; a route that takes files or long lists says how much more it takes. */
const BODY_LIMIT = 256 * 1024;

/** Builds the whole service, not yet listening; the process and the tests use this same one. */
export async function buildApp(deps: Deps, log?: LogStream): Promise<FastifyInstance> {
  const app = Fastify({
    logger: requestLog(deps.config.LOG_LEVEL, log),
    // One line for each refusal or failure is enough; a line per request would drown them.
    logController: new LogController({ disableRequestLogging: true }),
    trustProxy: deps.config.TRUSTED_PROXIES?.split(',').map((each) => each.trim()) ?? false,
    bodyLimit: BODY_LIMIT,
    routerOptions: { maxParamLength: 200 },
    genReqId: () => crypto.randomUUID(),
    requestIdHeader: false,
    clientErrorHandler: answerBrokenRequest,
    frameworkErrors,
    forceCloseConnections: 'idle',
    // The framework's own answer while closing is no problem document: `draining` answers instead.
    return503OnClosing: false,
    requestTimeout: 30_000,
  });
  app.removeContentTypeParser(['application/json', 'text/plain']);
  jsonBodies(app, parseJson);
  app.setValidatorCompiler(leaveUnchecked);
  // Answers are built by their schemas, and tests check every one against its own (`checkAnswer`); doing so here too
  // would double the work.
  app.setSerializerCompiler(() => (data) => JSON.stringify(data));
  if (deps.checkAnswer !== undefined) checkAnswers(app, deps.checkAnswer);

  await app.register(problems, {
    pageError: (request, reply, problem) => pageError(deps, request, reply, problem),
  });
  await app.register(securityHeaders);
  await app.register(draining, { lifecycle: deps.lifecycle });
  await app.register(forwarded);
  await app.register(cleanAddress);
  await app.register(bodyKinds);
  await app.register(cookie);
  await pageViews(app, deps.views);
  await app.register(formbody, { bodyLimit: BODY_LIMIT });
  await app.register(sameSite, { opening: openingCookie(deps.secure) });
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Benchcall',
        version: '1.0.0',
        description:
          'Calls, builds, readings and computations for valvetrain support, as the pages have them.',
        license: { name: 'Proprietary', identifier: 'LicenseRef-Proprietary' },
      },
      servers: [{ url: deps.config.PUBLIC_URL ?? '/' }],
      tags: [
        { name: 'compute', description: 'Computations; nothing is stored and no key is needed' },
        { name: 'access', description: 'Signing in, keys and share links' },
        { name: 'calls', description: 'Calls, their first question, stop, notes and promises' },
        { name: 'builds', description: 'Builds with their revisions, arms and placements' },
        { name: 'catalogue', description: 'Part families of the shop, loaded and saved as a file' },
        { name: 'identification', description: 'A part in the hand, set against the catalogue' },
        { name: 'readings', description: 'Set-ups, readings, questions and ratios' },
        { name: 'service', description: 'The service itself' },
      ],
      components: {
        securitySchemes: {
          bearer: { type: 'http', scheme: 'bearer', description: 'an API key, a session, or a share link' },
        },
      },
    },
    transform: describeRoute,
  });

  healthRoutes(app, deps);
  await app.register((scope, _, done) => {
    computeRoutes(scope, deps);
    done();
  });
  apiRoutes(app, deps);
  liveRoutes(app, deps);
  pageRoutes(app, deps);
  return app;
}
