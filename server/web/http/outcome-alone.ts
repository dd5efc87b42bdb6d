import type { FastifyReply, FastifyRequest } from 'fastify';
import { PROBLEMS } from '../../problems/registry.ts';

/**
 * Whether a form was posted by a program that wants to know what became of it, and no page (RFC 7240, section 4.2):
 * the browser's own script, sending later what was entered without a signal.
 */
export function wantsOutcomeAlone(request: FastifyRequest): boolean {
  const preferred = [request.headers.prefer ?? []].flat().join(',');
  return preferred.split(/[,;]/).some((each) => /^return\s*=\s*"?minimal"?$/i.test(each.trim()));
}

/** Each ends once, whether its words came with a full stop or not. */
const asSentence = (said: string): string => (/[.?!]$/.test(said) ? said : `${said}.`);

const SAID = { 'cache-control': 'no-store', 'preference-applied': 'return=minimal' };

/** It was kept, and can be seen there. */
export function keptAlone(reply: FastifyReply, location: string): FastifyReply {
  return reply
    .code(201)
    .headers({ ...SAID, location })
    .send();
}

/** Nothing was wrong and nothing was kept: the form only shows something, and what it shows is a page. */
export function shownAlone(reply: FastifyReply): FastifyReply {
  return reply.code(200).headers(SAID).send();
}

/** It was refused, in the same sentences as on the page. */
export function refusedAlone(reply: FastifyReply, sentences: readonly string[]): FastifyReply {
  const code = 'invalid-input';
  const { status, title } = PROBLEMS[code];
  return reply
    .code(status)
    .headers(SAID)
    .type('application/problem+json')
    .send(
      JSON.stringify({
        type: `/problems/${code}`,
        title,
        status,
        code,
        detail: sentences.map(asSentence).join(' '),
        requestId: reply.request.id,
      }),
    );
}
