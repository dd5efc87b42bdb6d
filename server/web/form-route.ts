import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { defined } from '../../shared/defined.ts';
import type { Tx } from '../database/database.ts';
import { note } from '../events/tx-notes.ts';
import { Failure } from '../problems/failure.ts';
import type { ProblemCode } from '../problems/registry.ts';
import type { Deps } from './deps.ts';
import { keepDraft } from './forms/drafts.ts';
import type { Fields, FormFault } from './forms/read-form.ts';
import { keptAlone, refusedAlone, shownAlone, wantsOutcomeAlone } from './http/outcome-alone.ts';
import { largeBody } from './large-body.ts';
import { type PageRequest, type PageSide, pathOf, receive, received } from './page-request.ts';
import type { PageRoute } from './page-route.ts';
import { type Page, renderPage } from './pages/render.ts';
import { asPagePrincipal } from './principals.ts';
import { refusedPage } from './refused-page.ts';
import { idempotencyKey, runOnce } from './run-once.ts';

/** What a posted form answers: where to go, or the page again with its faults. */
export type FormAnswer =
  | { readonly goTo: string }
  | { readonly faults: readonly FormFault[]; readonly typed: Fields };

type Run = (tx: Tx, req: PageRequest) => Promise<FormAnswer>;

/** What a form does: in its transaction, and what takes long before it, which then gives what is run in it. */
export type Running = { readonly run: Run } | { before(req: PageRequest): Promise<Run> };

/**
 * A form on a page. What it posts runs as one command; success answers 303, a fault answers 422 with the same
 * page, everything as it was typed. The form carries a key, so that a double click has its effect once. To refresh
 * the refused page sends the form again, which is refused again and keeps nothing; a page of its own is declared
 * before its form.
 */
export function postForm(
  app: FastifyInstance,
  deps: Deps,
  route: PageRoute & {
    /** The address the form posts to; left out, that of the page. */
    readonly action?: string;
    /** Bytes of what it posts, where that may be more than usual: it is then read of nobody who is not signed in. */
    readonly bodyLimit?: number;
  } & Running,
): void {
  const action = route.action ?? route.url;
  const hasPage = app.hasRoute({ method: 'GET', url: action });
  if (!hasPage) refusedPage(app, deps, route, action);
  const large = largeBody(route.bodyLimit, (request) =>
    asPagePrincipal(request, deps, route.side, async () => undefined, 'read'),
  );
  app.post(action, { schema: { hide: true }, ...large }, async (request, reply) => {
    const { req, answer } = await postedForm(request, reply, deps, route);
    const alone = wantsOutcomeAlone(request);
    if ('goTo' in answer && alone) return keptAlone(reply, answer.goTo);
    if ('goTo' in answer)
      return reply.code(303).header('location', answer.goTo).header('cache-control', 'no-store').send();
    // Without a fault it is a trial that was asked for: the page again, and nothing kept.
    const trial = answer.faults.length === 0;
    if (!hasPage && !trial && !alone)
      await deps.db.shopTransaction(req.principal.shopId, (tx) =>
        keepDraft(tx, req.principal, pathOf(request), answer),
      );
    const page = await deps.db.shopTransaction(
      req.principal.shopId,
      (tx) => route.page(tx, req, answer),
      'read',
    );
    if (alone) return trial ? shownAlone(reply) : refusedAlone(reply, sentencesOf(page));
    return renderPage(deps, request, reply, {
      ...page,
      ...(trial ? {} : { title: `Error: ${page.title}`, status: 422 }),
      principal: req.principal,
    });
  });
}

/** What a page says is wrong with what was posted. */
export function sentencesOf({ data }: Page): string[] {
  return 'errors' in data ? (data.errors ?? []).map(({ text }) => text) : [];
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
  // A program is told the code of it.
  if (wantsOutcomeAlone(req.request)) throw error;
  if (error instanceof Failure && SHOWN_ON_PAGE.has(error.code)) {
    const { code, detail, line } = error;
    const fault = { field: '', detail, held: code === 'held', ...defined({ line }) };
    return { faults: [fault], typed: req.fields };
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
    path: pathOf(req.request),
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

/** When the form was pressed, by the clock of a device that sends it later. */
function typedOn({ headers }: FastifyRequest): Date | undefined {
  const said = headers['benchcall-typed'];
  if (typeof said !== 'string' || !/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/.test(said)) return undefined;
  const at = new Date(said);
  return Number.isNaN(at.getTime()) ? undefined : at;
}

async function postedForm(
  request: FastifyRequest,
  reply: FastifyReply,
  deps: Deps,
  route: { readonly side: PageSide } & Running,
): Promise<{ readonly req: PageRequest; readonly answer: FormAnswer }> {
  const posted: { req?: PageRequest } = {};
  try {
    let run: Run;
    if ('run' in route) run = route.run;
    else {
      posted.req = await received(request, reply, deps, route.side);
      run = await route.before(posted.req);
    }
    return await receive(
      request,
      reply,
      deps,
      route.side,
      async (tx, req) => {
        posted.req = req;
        const typed = typedOn(request);
        if (typed !== undefined) note(tx, { typedAt: typed });
        return { req, answer: await performForm(tx, req, deps, run) };
      },
      'write',
    );
  } catch (error) {
    if (posted.req === undefined) throw error;
    return { req: posted.req, answer: refusalOf(error, posted.req) };
  }
}
