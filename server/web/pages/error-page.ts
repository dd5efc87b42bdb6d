import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Deps } from '../deps.ts';
import type { Problem } from '../http/problems.ts';
import { renderPage } from './render.ts';

const ADVICE: Partial<Record<Problem['code'], string>> = {
  'not-found': 'The address may be mistyped, or the link may have ended. Ask whoever sent it for a new one.',
  'internal-error':
    'Nothing that was kept is lost. Go back, and try again; if it happens again, tell the desk the number below.',
  'service-busy':
    'Nothing that was kept is lost. Wait a moment and send it again; what you typed is still on the page before this one.',
  'cross-site': 'Open the page here and send the form from it.',
  'quota-exceeded': 'Wait a little, then try again.',
};

/** What a person sees when there is no page, or it can't be shown. Signed-out desk pages lead to the sign-in. */
export async function pageError(
  deps: Deps,
  request: FastifyRequest,
  reply: FastifyReply,
  problem: Problem,
): Promise<FastifyReply> {
  if (problem.code === 'sign-in-required' && request.method === 'GET' && !request.url.startsWith('/bench')) {
    const back = encodeURIComponent(request.url.slice(0, 500));
    return reply
      .code(303)
      .header('location', `/sign-in?next=${back}`)
      .header('cache-control', 'no-store')
      .send();
  }
  return renderPage(deps, request, reply, {
    template: 'error',
    title: problem.title,
    status: problem.status,
    data: {
      title: problem.title,
      detail: problem.detail,
      advice: ADVICE[problem.code],
      requestId: problem.requestId,
    },
  });
}
