import type { FastifyReply } from 'fastify';
import type { Deps } from '../../web/deps.ts';
import { setOpeningCookie } from '../../web/principals.ts';

/** A page whose address is a secret: not kept, not listed, not told to another address. */
export function keepToItself(deps: Deps, reply: FastifyReply): void {
  reply.headers({
    'cache-control': 'no-store',
    'referrer-policy': 'no-referrer',
    'x-robots-tag': 'noindex, nofollow',
  });
  setOpeningCookie(reply, deps);
}
