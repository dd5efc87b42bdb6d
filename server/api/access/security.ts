import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import {
  listSecurityEvents,
  SECURITY_DAYS,
  securityEventView,
  showSecurityEvent,
} from '../../auth/security-events.ts';
import { noParams, readRoute } from '../../web/api-route.ts';
import type { Deps } from '../../web/deps.ts';

const eventsView = z.object({ events: z.array(securityEventView), next: z.uuid().optional() });

const eventsQuery = z.strictObject({
  after: z.uuid().optional().meta({ description: 'next of the page before' }),
  limit: z.coerce.number().int().min(1).max(200).default(50),
});

/** What happened to the ways in. */
export function securityRoute(app: FastifyInstance, deps: Deps): void {
  readRoute(app, deps, {
    operationId: 'listSecurityEvents',
    tag: 'access',
    summary: `Sign-ins, passwords, keys and links of the shop, the newest first; kept for ${SECURITY_DAYS} days`,
    url: '/api/v1/security-events',
    params: noParams,
    query: eventsQuery,
    answer: eventsView,
    read: async (tx, { principal, query }) => {
      const found = await listSecurityEvents(tx, principal, { ...query, limit: query.limit + 1 });
      const events = found.slice(0, query.limit);
      return answer(eventsView, {
        events: events.map(showSecurityEvent),
        next: found.length > events.length ? events.at(-1)?.id : undefined,
      });
    },
  });
}
