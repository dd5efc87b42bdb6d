import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Caller } from '../access/caller.ts';
import type { Tx } from '../database/database.ts';
import type { Deps } from '../deps.ts';
import { type Fields, type FormFault, fieldsOf } from '../forms/read-form.ts';
import { type Page, renderPage } from '../pages/render.ts';
import { Failure } from '../problems/failure.ts';
import { pageCaller } from './callers.ts';
import { idempotencyKey, perform } from './perform.ts';

export type PageSide = 'desk' | 'bench';

/** What a page handler gets: who it is for, and the parts of the address. */
export interface PageRequest {
  readonly caller: Caller;
  readonly side: PageSide;
  readonly params: Readonly<Record<string, string>>;
  readonly query: Readonly<Record<string, string>>;
  readonly fields: Fields;
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

/** Whom a page request is for, with the parts of its address and what was posted. */
export async function received(
  request: FastifyRequest,
  reply: FastifyReply,
  deps: Deps,
  side: PageSide,
): Promise<PageRequest> {
  const caller = await pageCaller(request, deps, side);
  if (caller === undefined)
    throw new Failure('sign-in-required', side === 'desk' ? 'sign in first' : 'open your link again');
  const params = texts(request.params);
  for (const [name, value] of Object.entries(params)) {
    if (/id$/i.test(name) && !ID.test(value)) throw new Failure('not-found', 'nothing is here');
  }
  return {
    caller,
    side,
    params,
    query: texts(request.query),
    fields: fieldsOf(request.body),
    request,
    reply,
  };
}

export interface PageRoute {
  readonly url: string;
  readonly side: PageSide;
  /** Builds the page from a transaction of the caller's shop; with faults, as it was typed. */
  page(
    tx: Tx,
    given: PageRequest,
    again?: { readonly faults: readonly FormFault[]; readonly typed: Fields },
  ): Promise<Page>;
}

/** A page that is read. */
export function getPage(app: FastifyInstance, deps: Deps, route: PageRoute): void {
  app.get(route.url, { schema: { hide: true } }, async (request, reply) => {
    const given = await received(request, reply, deps, route.side);
    const page = await deps.db.inShop(given.caller.shopId, (tx) => route.page(tx, given));
    return renderPage(deps, request, reply, { ...page, caller: given.caller });
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
    run(tx: Tx, given: PageRequest): Promise<FormAnswer>;
  },
): void {
  app.post(route.action ?? route.url, { schema: { hide: true } }, async (request, reply) => {
    const given = await received(request, reply, deps, route.side);
    const answer = await performForm(deps, given, route.run);
    if ('goTo' in answer)
      return reply.code(303).header('location', answer.goTo).header('cache-control', 'no-store').send();
    const page = await deps.db.inShop(given.caller.shopId, (tx) => route.page(tx, given, answer));
    // Without a fault it is a trial that was asked for: the page again, and nothing kept.
    const trial = answer.faults.length === 0;
    return renderPage(deps, request, reply, {
      ...page,
      ...(trial ? {} : { title: `Error: ${page.title}`, status: 422 }),
      caller: given.caller,
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

async function performForm(
  deps: Deps,
  given: PageRequest,
  run: (tx: Tx, given: PageRequest) => Promise<FormAnswer>,
): Promise<FormAnswer> {
  const { key, ...body } = given.fields;
  try {
    const outcome = await perform(
      deps.db,
      given.caller,
      {
        method: 'POST',
        path: given.request.url.split('?')[0] ?? '',
        body,
        key: idempotencyKey(key || undefined),
        whileRunning: 'wait',
      },
      async (tx) => {
        const answer = await run(tx, given);
        if ('faults' in answer) throw new Refused(answer);
        return { status: 303, body: {}, location: answer.goTo };
      },
    );
    return { goTo: outcome.location ?? '/' };
  } catch (error) {
    if (error instanceof Refused) return error.answer;
    if (
      error instanceof Failure &&
      (error.code === 'conflict' ||
        error.code === 'held' ||
        error.code === 'version-stale' ||
        error.code === 'key-reused')
    ) {
      return { faults: [{ field: '', detail: error.detail }], typed: given.fields };
    }
    throw error;
  }
}
