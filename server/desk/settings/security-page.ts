import type { FastifyInstance } from 'fastify';
import { memberOf } from '../../../shared/member.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import {
  listSecurityEvents,
  SECURITY_DAYS,
  SECURITY_EVENTS,
  type SecurityEvent,
} from '../../auth/security-events.ts';
import type { Tx } from '../../database/database.ts';
import { tableComponent } from '../../web/components.ts';
import type { Deps } from '../../web/deps.ts';
import type { PageRequest } from '../../web/page-request.ts';
import { getPage } from '../../web/page-route.ts';
import type { Page } from '../../web/pages/render.ts';

const ON_A_PAGE = 50;

const said = (kind: string): string => String(memberOf(SECURITY_EVENTS, kind) ?? kind);

/** `2026-03-14 09:26 UTC` */
const momentOf = (at: string): string => `${at.slice(0, 10)} ${at.slice(11, 16)} UTC`;

const eventsTable = (events: readonly SecurityEvent[]): TableData => ({
  caption: 'Ways in',
  columns: [{ label: 'When' }, { label: 'Who' }, { label: 'What' }, { label: 'About' }, { label: 'From' }],
  rows: events.map(({ at, who, kind, about, from }) => ({
    cells: [momentOf(at), who, said(kind), about, from],
  })),
  empty: 'Nothing has happened yet.',
  note: `Of a failed sign-in it says whose account it was tried on. Kept for ${SECURITY_DAYS} days.`,
});

async function securityPage(tx: Tx, { principal, query }: PageRequest): Promise<Page> {
  const found = await listSecurityEvents(tx, principal, { after: query.after, limit: ON_A_PAGE + 1 });
  const events = found.slice(0, ON_A_PAGE);
  const last = found.length > events.length ? events.at(-1)?.id : undefined;
  const first =
    query.after === undefined ? {} : { previous: { href: '/desk/security', label: 'The newest' } };
  const next =
    last === undefined ? {} : { next: { href: `/desk/security?after=${last}`, label: 'Older ones' } };
  return {
    template: 'plain',
    title: 'Who came in',
    place: '/desk',
    data: {
      title: 'Who came in',
      wide: true,
      intro: 'Sign-ins, passwords, keys and links of this shop, the newest first.',
      sections: [
        tableComponent(eventsTable(events)),
        ...(last === undefined && query.after === undefined
          ? []
          : [{ template: '/parts/pager' as const, data: { label: 'Ways in', ...first, ...next } }]),
      ],
    },
  };
}

/** What happened to the ways in, for the administrator. */
export function securityPages(app: FastifyInstance, deps: Deps): void {
  getPage(app, deps, { url: '/desk/security', side: 'desk', page: securityPage });
}
