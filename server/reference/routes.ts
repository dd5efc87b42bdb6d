import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { memberOf } from '../../shared/member.ts';
import { parts } from '../../views/parts/registry.ts';
import type { Registered } from '../compute/registry.ts';
import { computeFormBeside, exampleTyped } from '../compute-forms/compute-form.ts';
import { notFound } from '../problems/failure.ts';
import type { Deps } from '../web/deps.ts';
import { type Fields, fieldsOf } from '../web/forms/read-form.ts';
import { originOf } from '../web/http/origin.ts';
import { type Page, renderPage } from '../web/pages/render.ts';
import { pagePrincipal } from '../web/principals.ts';
import { apiPage } from './api/api-page.ts';
import { computationPage } from './computation-page.ts';
import { listPage } from './list-page.ts';
import { problemPage, problemsPage } from './problems/problem-page.ts';

const HIDDEN = { schema: { hide: true } };

/** The longest list of quantities, several times over, as a form sends it. */
const BODY_LIMIT = 1024 * 1024;

async function show(deps: Deps, request: FastifyRequest, reply: FastifyReply, page: Page) {
  // Open to everybody; whoever is signed in at the desk keeps the way back to it.
  const principal = await pagePrincipal(request, deps, 'desk');
  return renderPage(deps, request, reply, { ...page, principal });
}

function paramOf(request: FastifyRequest, name: string): string {
  const { params } = request;
  const value = memberOf(params, name);
  return typeof value === 'string' ? value : '';
}

function computationOf(deps: Deps, request: FastifyRequest): Registered {
  const found = deps.computations.get(paramOf(request, 'name'));
  if (found === undefined) throw notFound('computation');
  return found;
}

async function computed(deps: Deps, request: FastifyRequest, reply: FastifyReply, fields: Fields) {
  const each = computationOf(deps, request);
  await deps.computeLimits.take(request.ip);
  const isExample = request.method === 'GET' && Object.keys(fields).every((name) => name === 'units');
  const form = await computeFormBeside(each, isExample ? exampleTyped(each, fields) : fields, (body, units) =>
    deps.work.answer(each, body, units, (ms) => deps.computeLimits.charge(request.ip, ms)),
  );
  return show(
    deps,
    request,
    reply,
    computationPage(each, form, { origin: originOf(deps, request), isExample }),
  );
}

/** The reference: its list, a page for each computation, and the parts of the pages. */
export function referencePages(app: FastifyInstance, deps: Deps): void {
  app.get('/reference', HIDDEN, (request, reply) =>
    show(deps, request, reply, listPage(deps.computations.values(), fieldsOf(request.query).q ?? '')),
  );
  app.get('/reference/parts', HIDDEN, (request, reply) =>
    show(deps, request, reply, {
      template: 'reference-parts',
      title: 'The parts of these pages',
      place: '/reference',
      data: { parts },
    }),
  );
  // The document is the same for as long as the process runs: read once, when it is first asked for.
  let api: Page | undefined;
  app.get('/reference/api', HIDDEN, (request, reply) => {
    api ??= apiPage(app.swagger());
    return show(deps, request, reply, api);
  });
  app.get('/problems', HIDDEN, (request, reply) => show(deps, request, reply, problemsPage()));
  app.get('/problems/:code', HIDDEN, (request, reply) => {
    const page = problemPage(paramOf(request, 'code'));
    if (page === undefined) throw notFound('problem');
    return show(deps, request, reply, page);
  });
  app.get('/reference/:name', HIDDEN, (request, reply) =>
    computed(deps, request, reply, fieldsOf(request.query)),
  );
  app.post('/reference/:name', { ...HIDDEN, bodyLimit: BODY_LIMIT }, (request, reply) =>
    computed(deps, request, reply, fieldsOf(request.body)),
  );
}
