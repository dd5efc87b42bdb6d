import type { FastifyReply, FastifyRequest } from 'fastify';
import { defined } from '../../../shared/defined.ts';
import type { BenchPage, LayoutFrame, LivePage, NavPlace } from '../../../views/layout.ts';
import type { PageContent } from '../../../views/pages/pages.ts';
import { SKIPS } from '../../../views/pages/skips.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Deps } from '../deps.ts';
import { pageSecurity } from '../http/security-headers.ts';
import { pageSecret } from '../principals.ts';

/** Whoever opens a page of the builder without its link, or with one that has ended. */
const ENDED: ReadonlySet<number> = new Set([401, 403, 410]);

/** Where the stream of a call is, which step this is, and where the other steps are. */
interface Live {
  /** `/live/calls/{id}` or `/live/bench`. */
  readonly stream: string;
  readonly steps: string;
  readonly step: string;
  /** The build's last sequence number when the page was made. */
  readonly seq: number;
  /** Whether a stop stood then. */
  readonly stopped: boolean;
  /** The address of what of the step is shown. */
  readonly at?: string;
  /** The field that what is next is entered in. */
  readonly nextField?: string;
}

/** What the script of a live page needs. A page that answers a form has an address that can't be fetched again. */
function liveOf(request: FastifyRequest, page: Page): { readonly live?: LivePage } {
  if (page.live === undefined || page.principal === undefined) return {};
  const { stream, steps, step, seq, stopped, at, nextField } = page.live;
  return {
    live: {
      href: `${stream}?step=${step}&after=${seq}`,
      steps,
      step,
      seq,
      stopped,
      self: page.principal.name,
      ...defined({ at, nextField }),
      ...(request.method === 'GET' ? {} : { beside: `${steps}/${step}` }),
    },
  };
}

function stateOf(deps: Deps, request: FastifyRequest, { status = 200, principal }: Page): BenchPage['state'] {
  if (!ENDED.has(status) || principal !== undefined) return 'open';
  return pageSecret(request, deps, 'bench') === undefined ? 'closed' : 'ended';
}

/** Pages of a link, and the page that is shown instead of them where it has ended. */
function benchOf(deps: Deps, request: FastifyRequest, page: Page): { readonly bench?: BenchPage } {
  const { principal } = page;
  if (principal?.kind !== 'builder' && !/^\/bench(\/|$)/.test(request.url.split('?')[0] ?? '')) return {};
  const { worker, manifest, touchIcon } = deps.assets;
  return {
    bench: {
      state: stateOf(deps, request, page),
      ...(principal?.kind === 'builder' ? { link: principal.id, build: principal.buildId } : {}),
      ...defined({ phone: deps.config.DESK_PHONE }),
      workerHref: worker.href,
      manifestHref: manifest.href,
      touchIconHref: touchIcon.href,
    },
  };
}

/** A page with its data, and what the layout needs to know of it. */
export type Page = PageContent & {
  readonly title: string;
  readonly status?: number;
  readonly side?: 'desk' | 'builder' | 'open';
  readonly principal?: Principal | undefined;
  /** A page of a call is kept as the other side sees it. */
  readonly live?: Live;
  /** The place in the main navigation that the page belongs to. */
  readonly place?: string;
};

function navigation(principal: Principal | undefined, place: string | undefined): NavPlace[] {
  const places = [
    ...(principal?.kind === 'staff'
      ? [
          { href: '/calls', label: 'Calls' },
          { href: '/catalogue', label: 'Catalogue' },
        ]
      : []),
    { href: '/reference', label: 'Reference' },
    ...(principal?.kind === 'staff' && principal.roles.includes('administrator')
      ? [
          { href: '/desk', label: 'The desk' },
          { href: '/desk/limits', label: 'Limits' },
        ]
      : []),
    ...(principal === undefined ? [{ href: '/sign-in', label: 'Sign in' }] : []),
  ];
  return places.map((each) => ({ ...each, current: each.href === place }));
}

function frameOf(deps: Deps, request: FastifyRequest, page: Page, nonce: string): LayoutFrame {
  const { principal } = page;
  const side =
    page.side ?? (principal === undefined ? 'open' : principal.kind === 'builder' ? 'builder' : 'desk');
  return {
    title: page.title,
    skip: SKIPS[page.template],
    styleHref: deps.assets.style.href,
    script: { href: deps.assets.script.href, nonce },
    iconHref: deps.assets.icon.href,
    nav: side === 'builder' ? [] : navigation(principal, page.place),
    signedIn:
      principal === undefined
        ? undefined
        : { name: principal.name, accountHref: principal.kind === 'staff' ? '/account' : undefined },
    side,
    ...liveOf(request, page),
    ...benchOf(deps, request, page),
    keysOff: principal?.kind === 'staff' && !principal.shortcuts,
  };
}

/** Renders a page inside the layout. What belongs to somebody is never kept by a cache. */
export async function renderPage(
  deps: Deps,
  request: FastifyRequest,
  reply: FastifyReply,
  page: Page,
): Promise<FastifyReply> {
  const { nonce, policy } = pageSecurity();
  const frame = frameOf(deps, request, page, nonce);
  const html = await reply.viewAsync(`/pages/${page.template}/page`, { ...page.data, frame });
  if (page.principal !== undefined) reply.header('cache-control', 'no-store');
  return reply
    .code(page.status ?? 200)
    .type('text/html; charset=utf-8')
    .headers({ 'content-security-policy': policy, 'x-request-id': request.id })
    .send(html);
}
