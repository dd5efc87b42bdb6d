import type { FastifyReply, FastifyRequest } from 'fastify';
import { defined } from '../../../shared/defined.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Deps } from '../deps.ts';
import type { Problem } from '../http/problems.ts';
import { pathOf } from '../page-request.ts';
import { pagePrincipal, pageSecret } from '../principals.ts';
import { renderPage } from './render.ts';

type Code = Problem['code'];

/** What happened, in the words of the page: no code, and no word of software. */
const HAPPENED: Partial<Record<Code, string>> = {
  'not-found': 'This page was not found',
  gone: 'This is no longer there',
  'method-not-allowed': 'This address can’t be used like that',
  'bad-request': 'This address can’t be read',
  'url-too-long': 'This address is too long to be one of ours',
};

const TO_DO: Partial<Record<Code, string>> = {
  gone: 'Ask the desk for a new link. Nothing that you entered is lost.',
  'internal-error':
    'Nothing that was kept is lost. Go back, and try again; if it happens again, call the desk.',
  'service-busy':
    'Nothing that was kept is lost. Wait a moment and send it again; what you typed is still on the page before this one.',
  'cross-site': 'Open the page here and send the form from it.',
  'quota-exceeded': 'Wait a little, then try again.',
};

/** A builder without a link that opens: it has ended, or it was never opened in this browser. */
function withoutLink(deps: Deps, request: FastifyRequest, code: Code) {
  if (code !== 'sign-in-required' || !isBench(request)) return undefined;
  return pageSecret(request, deps, 'bench') === undefined
    ? {
        title: 'Your build is not open in this browser',
        advice:
          'Open the link that the desk sent you once more, in this browser. If it was lost, ask the desk for a new one.',
      }
    : {
        title: 'This link has ended',
        advice: 'Nothing more is kept under it; what the desk has seen stays. Ask the desk for a new one.',
      };
}

/** Whether there ever was such a page, as far as the address tells. */
function everThere(request: FastifyRequest, problem: Problem): string | undefined {
  if (problem.code === 'gone') return 'It was there, and it has ended.';
  if (problem.code !== 'not-found') return undefined;
  if (request.is404)
    return 'There was never a page at this address: a part of it is mistyped, or was cut off where it was copied.';
  if (request.url.startsWith('/b/')) return 'A link is long: copy all of it, or scan its code again.';
  return 'There are pages like this one, but none with this name or number in your shop. Calls are never deleted: if it was there for you before, sign in as the same shop, or check the address.';
}

const isBench = (request: FastifyRequest) => /^\/bench(\/|$)/.test(pathOf(request));

const homeOf = (request: FastifyRequest) =>
  isBench(request) ? { href: '/bench', label: 'To your build' } : { href: '/', label: 'To the start' };

/** A service in trouble is not asked who this is; whoever is signed in keeps the menu otherwise. */
async function personOf(
  deps: Deps,
  request: FastifyRequest,
  { status }: Problem,
): Promise<Principal | undefined> {
  if (status >= 500) return undefined;
  return pagePrincipal(request, deps, isBench(request) ? 'bench' : 'desk').catch(() => undefined);
}

/** As much of the number of a request as is read out over the telephone; the log is searched by it. */
const shortOf = (requestId: string) => requestId.slice(0, 8);

/** What a person sees when there is no page, or it can't be shown. Signed-out desk pages lead to the sign-in. */
export async function pageError(
  deps: Deps,
  request: FastifyRequest,
  reply: FastifyReply,
  problem: Problem,
): Promise<FastifyReply> {
  if (problem.code === 'sign-in-required' && request.method === 'GET' && !isBench(request)) {
    const back = encodeURIComponent(request.url.slice(0, 500));
    return reply
      .code(303)
      .header('location', `/sign-in?next=${back}`)
      .header('cache-control', 'no-store')
      .send();
  }
  const closed = withoutLink(deps, request, problem.code);
  const title = closed?.title ?? HAPPENED[problem.code] ?? problem.title;
  // That nothing is here is what the title says.
  const detail = request.is404 || closed !== undefined ? undefined : problem.detail;
  return renderPage(deps, request, reply, {
    template: 'error',
    title,
    status: problem.status,
    principal: await personOf(deps, request, problem),
    data: {
      title,
      requestId: shortOf(problem.requestId),
      ...defined({
        // The way back would lead here again.
        home: closed === undefined ? homeOf(request) : undefined,
        detail,
        ever: everThere(request, problem),
        advice: closed?.advice ?? TO_DO[problem.code],
        phone: deps.config.DESK_PHONE,
      }),
    },
  });
}
