import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Caller } from '../access/caller.ts';
import { callerOf } from '../access/resolve.ts';
import type { Deps } from '../deps.ts';
import { Failure } from '../problems/failure.ts';

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

/** Whom the page is for, by the cookie of its side; undefined when nobody is signed in. */
export async function pageCaller(
  request: FastifyRequest,
  deps: Deps,
  side: 'desk' | 'bench',
): Promise<Caller | undefined> {
  const secret = request.cookies[cookieNames(deps.secure)[side]];
  if (secret === undefined) return undefined;
  const caller = await callerOf(deps.db, secret, deps.now());
  if (caller === undefined) return undefined;
  return (side === 'desk') === (caller.kind === 'staff') ? caller : undefined;
}

const BEARER = /^Bearer ([A-Za-z0-9_-]{20,100})$/i;

/** Whom a JSON request is from, by its bearer secret: a key, a session, or a share link. */
export async function apiCaller(request: FastifyRequest, deps: Deps): Promise<Caller> {
  const secret = BEARER.exec(request.headers.authorization ?? '')?.[1];
  const caller = secret === undefined ? undefined : await callerOf(deps.db, secret, deps.now());
  if (caller !== undefined) return caller;
  throw new Failure('sign-in-required', 'send Authorization: Bearer with a key, a session or a share link', {
    headers: { 'www-authenticate': 'Bearer realm="benchcall"' },
  });
}
