import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Principal } from '../auth/principal.ts';
import type { Access, Tx } from '../database/database.ts';
import { Failure } from '../problems/failure.ts';
import type { ProblemCode } from '../problems/registry.ts';
import type { Deps } from './deps.ts';
import { type Fields, type FormFault, fieldsOf } from './forms/read-form.ts';
import { type Page, renderPage } from './pages/render.ts';
import { asPagePrincipal } from './principals.ts';
import { idempotencyKey, runOnce } from './run-once.ts';

export type PageSide = 'desk' | 'bench';

/** What a page is made from: who it is for, and the parts of the address. */
export interface PageAsked {
  readonly principal: Principal;
  readonly side: PageSide;
  readonly params: Readonly<Record<string, string>>;
  readonly query: Readonly<Record<string, string>>;
  readonly fields: Fields;
}

/** The same with the request itself, for what reads or answers it. */
export interface PageRequest extends PageAsked {
  readonly request: FastifyRequest;
  readonly reply: FastifyReply;
}

/** What a posted form answers: where to go, or the page again with its faults. */
export type FormAnswer =
  | { readonly goTo: string }
  | { readonly faults: readonly FormFault[]; readonly typed: Fields };

const ID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;

function texts(value: unknown): Record<string, string> {
  if (typeof value !== 'object' || value === null) return {};
  return Object.fromEntries(
    Object.entries(value).filter((pair): pair is [string, string] => typeof pair[1] === 'string'),
  );
}

function partsOf(
  request: FastifyRequest,
  reply: FastifyReply,
  side: PageSide,
  principal: Principal,
): PageRequest {
  const params = texts(request.params);
  for (const [name, value] of Object.entries(params)) {
    if (/id$/i.test(name) && !ID.test(value)) throw new Failure('not-found', 'nothing is here');
  }
  return {
    principal,
    side,
    params,
    query: texts(request.query),
    fields: fieldsOf(request.body),
    request,
    reply,
  };
}

/** Runs `work` in the transaction that found whom a page request is for. */
export function receive<T>(
  request: FastifyRequest,
  reply: FastifyReply,
  deps: Deps,
  side: PageSide,
  work: (tx: Tx, req: PageRequest) => Promise<T>,
  access: Access,
): Promise<T> {
  return asPagePrincipal(
    request,
    deps,
    side,
    (tx, principal) => work(tx, partsOf(request, reply, side, principal)),
    access,
  );
}

/** Whom a page request is for, with the parts of its address and what was posted. */
export function received(
  request: FastifyRequest,
  reply: FastifyReply,
  deps: Deps,
  side: PageSide,
): Promise<PageRequest> {
  return receive(request, reply, deps, side, async (_tx, req) => req, 'read');
}

interface PageRoute {
  readonly url: string;
  readonly side: PageSide;
  /** Builds the page from a transaction of the caller's shop; with faults, as it was typed. */
  page(
    tx: Tx,
    req: PageRequest,
    rejected?: { readonly faults: readonly FormFault[]; readonly typed: Fields },
  ): Promise<Page>;
}

/** A page that is read. */
export function getPage(app: FastifyInstance, deps: Deps, route: PageRoute): void {
  app.get(route.url, { schema: { hide: true } }, async (request, reply) => {
    const page = await receive(
      request,
      reply,
      deps,
      route.side,
      async (tx, req) => ({
        ...(await route.page(tx, req)),
        principal: req.principal,
      }),
      'read',
    );
    return renderPage(deps, request, reply, page);
  });
}

/**
 * A form on a page. What it posts runs as one command; success answers 303, a fault answers 422 with the same
 * page, everything as it was typed. The form carries a key, so that a double click has its effect once.
 */
export function postForm(
  app: FastifyInstance,
  deps: Deps,
  route: PageRoute & {
    /** The address the form posts to; left out, that of the page. */
    readonly action?: string;
    run(tx: Tx, req: PageRequest): Promise<FormAnswer>;
  },
): void {
  app.post(route.action ?? route.url, { schema: { hide: true } }, async (request, reply) => {
    const { req, answer } = await postedForm(request, reply, deps, route);
    if ('goTo' in answer)
      return reply.code(303).header('location', answer.goTo).header('cache-control', 'no-store').send();
    const page = await deps.db.shopTransaction(
      req.principal.shopId,
      (tx) => route.page(tx, req, answer),
      'read',
    );
    // Without a fault it is a trial that was asked for: the page again, and nothing kept.
    const trial = answer.faults.length === 0;
    return renderPage(deps, request, reply, {
      ...page,
      ...(trial ? {} : { title: `Error: ${page.title}`, status: 422 }),
      principal: req.principal,
    });
  });
}

/** A refusal leaves nothing behind: the transaction ends by this, and the page is shown again. */
class Refused extends Error {
  readonly answer: Extract<FormAnswer, { faults: readonly FormFault[] }>;
  constructor(answer: Extract<FormAnswer, { faults: readonly FormFault[] }>) {
    super('refused');
    this.answer = answer;
  }
}

const SHOWN_ON_PAGE: ReadonlySet<ProblemCode> = new Set([
  'conflict',
  'held',
  'stop-rests-on-it',
  'version-stale',
  'key-reused',
]);

/** What of a failure the page itself can show; anything else is thrown on. */
function refusalOf(error: unknown, req: PageRequest): FormAnswer {
  if (error instanceof Refused) return error.answer;
  if (error instanceof Failure && SHOWN_ON_PAGE.has(error.code)) {
    return { faults: [{ field: '', detail: error.detail }], typed: req.fields };
  }
  throw error;
}

async function performForm(
  tx: Tx,
  req: PageRequest,
  deps: Deps,
  run: (tx: Tx, req: PageRequest) => Promise<FormAnswer>,
): Promise<FormAnswer> {
  const { key, ...body } = req.fields;
  const command = {
    method: 'POST',
    path: req.request.url.split('?')[0] ?? '',
    body,
    key: idempotencyKey(key || undefined),
    whileRunning: 'wait' as const,
  };
  const outcome = await runOnce(tx, req.principal, command, async () => {
    const answer = await deps.guard(tx, req.principal, () => run(tx, req));
    if ('faults' in answer) throw new Refused(answer);
    return { status: 303, body: {}, location: answer.goTo };
  });
  return { goTo: outcome.location ?? '/' };
}

async function postedForm(
  request: FastifyRequest,
  reply: FastifyReply,
  deps: Deps,
  route: { readonly side: PageSide; run(tx: Tx, req: PageRequest): Promise<FormAnswer> },
): Promise<{ readonly req: PageRequest; readonly answer: FormAnswer }> {
  const posted: { req?: PageRequest } = {};
  try {
    return await receive(
      request,
      reply,
      deps,
      route.side,
      async (tx, req) => {
        posted.req = req;
        return { req, answer: await performForm(tx, req, deps, route.run) };
      },
      'write',
    );
  } catch (error) {
    if (posted.req === undefined) throw error;
    return { req: posted.req, answer: refusalOf(error, posted.req) };
  }
}
