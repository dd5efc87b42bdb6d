import { sql } from 'kysely';
import { z } from 'zod';
import { defined } from '../../../shared/defined.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { Fields, FormFault } from './read-form.ts';

/*
 * A form that was refused is answered to its POST, so that its address is one that only takes forms. What was typed is
 * kept for an hour beside the answers of commands: whoever asks for that address again, by going back or by its line in
 * the browser, gets the same page. One for each form and person; never a password.
 */

const METHOD = 'GET';
const KEY = 'refused form';
const SHORT_TIME = sql<Date>`now() - interval '1 hour'`;
const UNKEPT: ReadonlySet<string> = new Set(['password', 'current', 'key']);

/** A form that came back, as its page takes it. */
export interface RefusedForm {
  readonly typed: Fields;
  readonly faults: readonly FormFault[];
}

const stored = z.object({
  typed: z.record(z.string(), z.string()),
  faults: z.array(
    z.object({
      field: z.string(),
      detail: z.string(),
      held: z.boolean().optional(),
      ambiguities: z
        .array(
          z.object({
            readAs: z.string(),
            quantity: z.object({ value: z.number(), unit: z.string() }),
            question: z.string(),
          }),
        )
        .optional(),
    }),
  ),
});

const callerOf = ({ kind, id }: Principal): string => `${kind} ${id}`;

/** Keeps a refused form in the place of the one before, and lets go of those whose time is over. */
export async function keepDraft(
  tx: Tx,
  principal: Principal,
  path: string,
  { typed, faults }: RefusedForm,
): Promise<void> {
  const shown = Object.fromEntries(Object.entries(typed).filter(([name]) => !UNKEPT.has(name)));
  await tx
    .deleteFrom('idempotency')
    .where('shop_id', '=', principal.shopId)
    .where('method', '=', METHOD)
    .where('key', '=', KEY)
    .where(({ and, or, eb }) =>
      or([
        eb('created_at', '<', SHORT_TIME),
        and([eb('caller', '=', callerOf(principal)), eb('path', '=', path)]),
      ]),
    )
    .execute();
  await tx
    .insertInto('idempotency')
    .values({
      shop_id: principal.shopId,
      caller: callerOf(principal),
      method: METHOD,
      path,
      key: KEY,
      request_hash: '',
      status: 422,
      body: JSON.stringify({ typed: shown, faults }),
      location: null,
      etag: null,
    })
    .execute();
}

/** The refused form of this address, unless the same person has sent one since that was taken. */
export async function draftOf(tx: Tx, principal: Principal, path: string): Promise<RefusedForm | undefined> {
  const rows = await tx
    .selectFrom('idempotency')
    .select(['method', 'key', 'body'])
    .where('shop_id', '=', principal.shopId)
    .where('caller', '=', callerOf(principal))
    .where('path', '=', path)
    .where('created_at', '>', SHORT_TIME)
    .orderBy('created_at', 'desc')
    .limit(1)
    .execute();
  const [newest] = rows;
  if (newest?.method !== METHOD || newest.key !== KEY) return undefined;
  const read = stored.safeParse(newest.body);
  if (!read.success) return undefined;
  const { typed, faults } = read.data;
  return {
    typed,
    faults: faults.map(({ ambiguities, held, ...fault }) => ({
      ...fault,
      ...defined({ ambiguities, held }),
    })),
  };
}
