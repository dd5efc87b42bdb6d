import { z } from 'zod';
import { answer } from '../../shared/schemas/answer.ts';
import type { Tx } from '../database/database.ts';
import { notFound } from '../problems/failure.ts';
import { type Principal, requireAdministrator } from './principal.ts';
import { isId } from './secrets.ts';

/** What happens to the ways in, with the words that a page has for it. */
export const SECURITY_EVENTS = {
  'signed-in': 'signed in',
  'sign-in-failed': 'a sign-in failed',
  'first-link-used': 'the first link was used',
  'password-changed': 'the password was changed',
  'password-refused': 'the current password was wrong',
  'password-link-made': 'a link to set a password was made',
  'password-set': 'the password was set by a link',
  'person-added': 'a person was added',
  'person-left': 'a person was taken off the desk',
  'person-back': 'a person was brought back',
  'role-changed': 'the role was changed',
  'session-ended': 'a session was ended',
  'key-made': 'a key was made',
  'key-ended': 'a key was ended',
  'link-made': 'a link was made',
  'link-ended': 'a link was ended',
} as const;
type SecurityKind = keyof typeof SECURITY_EVENTS;

/** Days for which they are kept; `past_its_time` in the migrations lets them be deleted after that. */
export const SECURITY_DAYS = 365;

export const securityEventView = z
  .object({
    id: z.uuid(),
    kind: z.string().meta({ description: `what happened: ${Object.keys(SECURITY_EVENTS).join(', ')}` }),
    who: z.string().meta({ description: 'who did it; of a failed sign-in, whose account it was tried on' }),
    about: z.string().meta({ description: 'what it was done to, where that is something else' }),
    from: z.string().meta({ description: 'the address it came from' }),
    at: z.iso.datetime(),
  })
  .meta({ id: 'SecurityEvent' });
export type SecurityEvent = z.output<typeof securityEventView>;

export const showSecurityEvent = (event: SecurityEvent) =>
  answer(securityEventView, {
    id: event.id,
    kind: event.kind,
    who: event.who,
    about: event.about,
    from: event.from,
    at: event.at,
  });

/** Writes down what happened, in the transaction in which it did. */
export async function noteSecurity(
  tx: Tx,
  shopId: string,
  event: {
    readonly kind: SecurityKind;
    readonly who: string;
    readonly about?: string;
    readonly from: string | undefined;
  },
): Promise<void> {
  await tx
    .insertInto('security_event')
    .values({
      shop_id: shopId,
      kind: event.kind,
      who: event.who,
      about: event.about ?? '',
      from_address: event.from ?? '',
    })
    .execute();
}

/** The same of what a principal did. */
export const noteSecurityOf = (tx: Tx, principal: Principal, kind: SecurityKind, about = ''): Promise<void> =>
  noteSecurity(tx, principal.shopId, { kind, who: principal.name, about, from: principal.from });

/** The newest first; `after` is the last of the page before. */
export async function listSecurityEvents(
  tx: Tx,
  principal: Principal,
  { after, limit }: { readonly after?: string | undefined; readonly limit: number },
): Promise<SecurityEvent[]> {
  requireAdministrator(principal);
  if (after !== undefined && !isId(after)) throw notFound('event to go on after');
  const mine = tx.selectFrom('security_event').where('shop_id', '=', principal.shopId);
  if (after !== undefined) {
    const last = await mine.select('id').where('id', '=', after).executeTakeFirst();
    if (last === undefined) throw notFound('event to go on after');
  }
  const rows = await mine
    .selectAll()
    .$if(after !== undefined, (query) =>
      // In the database: a moment that goes through the service loses its microseconds.
      query.where(({ eb, refTuple, selectFrom }) =>
        eb(
          refTuple('happened_at', 'id'),
          '<',
          selectFrom('security_event as last')
            .select(['last.happened_at', 'last.id'])
            .where('last.shop_id', '=', principal.shopId)
            .where('last.id', '=', after ?? '')
            .$asTuple('happened_at', 'id'),
        ),
      ),
    )
    .orderBy('happened_at', 'desc')
    .orderBy('id', 'desc')
    .limit(limit)
    .execute();
  return rows.map((row) => ({
    id: row.id,
    kind: row.kind,
    who: row.who,
    about: row.about,
    from: row.from_address,
    at: row.happened_at.toISOString(),
  }));
}
