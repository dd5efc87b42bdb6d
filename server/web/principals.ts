import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Principal } from '../auth/principal.ts';
import { asPrincipal, principalOf } from '../auth/resolve.ts';
import type { Access, Tx } from '../database/database.ts';
import { Failure } from '../problems/failure.ts';
import type { Deps } from './deps.ts';

/** Cookie names; `__Host-` needs https, so plain http on a bench network goes without it. */
export function cookieNames(secure: boolean): { desk: string; bench: string } {
  return secure
    ? { desk: '__Host-benchcall-desk', bench: '__Host-benchcall-bench' }
    : { desk: 'benchcall-desk', bench: 'benchcall-bench' };
}

export function setSecretCookie(
  reply: FastifyReply,
  deps: Deps,
  which: 'desk' | 'bench',
  secret: string,
  expires: Date,
): void {
  reply.setCookie(cookieNames(deps.secure)[which], secret, {
    path: '/',
    httpOnly: true,
    secure: deps.secure,
    sameSite: which === 'desk' ? 'strict' : 'lax',
    expires,
  });
}

/** The cookie of a browser in which somebody has signed in before; it opens nothing, and stays when they sign out. */
const knownCookie = (secure: boolean): string => (secure ? '__Host-benchcall-known' : 'benchcall-known');

export const knownSecret = (request: FastifyRequest, deps: Deps): string | undefined =>
  request.cookies[knownCookie(deps.secure)];

export function setKnownCookie(reply: FastifyReply, deps: Deps, secret: string, expires: Date): void {
  reply.setCookie(knownCookie(deps.secure), secret, {
    path: '/',
    httpOnly: true,
    secure: deps.secure,
    sameSite: 'strict',
    expires,
  });
}

/** The cookie that says a page with a secret address was opened in this browser; see `sameSite`. */
export function openingCookie(secure: boolean): string {
  return secure ? '__Host-benchcall-opening' : 'benchcall-opening';
}

export function setOpeningCookie(reply: FastifyReply, deps: Deps): void {
  reply.setCookie(openingCookie(deps.secure), '1', {
    path: '/',
    httpOnly: true,
    secure: deps.secure,
    sameSite: 'strict',
    maxAge: 86_400,
  });
}

export function clearSecretCookie(reply: FastifyReply, deps: Deps, which: 'desk' | 'bench'): void {
  reply.clearCookie(cookieNames(deps.secure)[which], { path: '/', httpOnly: true, secure: deps.secure });
}

export function pageSecret(request: FastifyRequest, deps: Deps, side: 'desk' | 'bench'): string | undefined {
  return request.cookies[cookieNames(deps.secure)[side]];
}

/**
 * What was entered without a signal is sent later, when another link may have been opened in the same browser: it
 * names the link that it was typed under, and goes into no other build.
 */
function isOfAnotherLink(request: FastifyRequest, principal: Principal): boolean {
  const typedUnder = request.headers['benchcall-link'];
  return typedUnder !== undefined && typedUnder !== principal.id;
}

const belongs = (principal: Principal, side: 'desk' | 'bench') =>
  (side === 'desk') === (principal.kind === 'staff');

/** Whom the page is for, by the cookie of its side; undefined when nobody is signed in. */
export async function pagePrincipal(
  request: FastifyRequest,
  deps: Deps,
  side: 'desk' | 'bench',
): Promise<Principal | undefined> {
  const secret = pageSecret(request, deps, side);
  if (secret === undefined) return undefined;
  const principal = await principalOf(deps.db, secret, deps.now());
  return principal !== undefined && belongs(principal, side) ? principal : undefined;
}

/** Runs `work` for whom the page is for, in the transaction that found them. */
export async function asPagePrincipal<T>(
  request: FastifyRequest,
  deps: Deps,
  side: 'desk' | 'bench',
  work: (tx: Tx, principal: Principal) => Promise<T>,
  access: Access,
): Promise<T> {
  const nobody = () =>
    new Failure('sign-in-required', side === 'desk' ? 'sign in first' : 'open your link again');
  const secret = pageSecret(request, deps, side);
  if (secret === undefined) throw nobody();
  const done = await asPrincipal(
    deps.db,
    secret,
    deps.now(),
    (tx, principal) => {
      if (!belongs(principal, side) || isOfAnotherLink(request, principal)) throw nobody();
      return work(tx, { ...principal, from: request.ip });
    },
    access,
  );
  if (done === undefined) throw nobody();
  return done.answer;
}

const BEARER = /^Bearer ([A-Za-z0-9_-]{20,100})$/i;

/** Runs `work` for whom a JSON request is from, by its bearer secret: a key, a session, or a share link. */
export async function asApiPrincipal<T>(
  request: FastifyRequest,
  deps: Deps,
  work: (tx: Tx, principal: Principal) => Promise<T>,
  access: Access,
): Promise<T> {
  const secret = BEARER.exec(request.headers.authorization ?? '')?.[1];
  const done =
    secret === undefined
      ? undefined
      : await asPrincipal(
          deps.db,
          secret,
          deps.now(),
          (tx, principal) => work(tx, { ...principal, from: request.ip }),
          access,
        );
  if (done !== undefined) return done.answer;
  throw new Failure('sign-in-required', 'send Authorization: Bearer with a key, a session or a share link', {
    headers: { 'www-authenticate': 'Bearer realm="benchcall"' },
  });
}

/** Whom a JSON request is from. */
export function apiPrincipal(request: FastifyRequest, deps: Deps): Promise<Principal> {
  return asApiPrincipal(request, deps, async (_tx, principal) => principal, 'read');
}
