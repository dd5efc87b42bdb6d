import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Principal } from '../auth/principal.ts';
import type { Access, Tx } from '../database/database.ts';
import { Failure } from '../problems/failure.ts';
import type { Deps } from './deps.ts';
import { type Fields, fieldsOf } from './forms/read-form.ts';
import { asPagePrincipal } from './principals.ts';

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
