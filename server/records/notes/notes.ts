import { type Selectable, sql } from 'kysely';
import type { z } from 'zod';
import type { newNote } from '../../../shared/schemas/commands.ts';
import { author, type Principal, requireDesk } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import type { NoteTable } from '../../database/tables/record.ts';
import { changeBuild } from '../../events/change-build.ts';
import { Failure, notFound } from '../../problems/failure.ts';
import { getCall } from '../calls/calls.ts';
import { NOTE_EVENTS } from './events.ts';

const KEPT = {
  note: NOTE_EVENTS['note-kept'],
  advice: NOTE_EVENTS['advice-kept'],
  promise: NOTE_EVENTS['promise-kept'],
} as const;

/** A note, advice given, or a promise with its owner and date. */
export interface Note {
  readonly id: string;
  readonly callId: string;
  readonly kind: string;
  readonly body: string;
  readonly restsOn: string;
  readonly owner: string;
  readonly due: string | undefined;
  readonly doneAt: Date | undefined;
  readonly seq: number;
  readonly by: string;
  readonly at: Date;
}

export async function keepNote(
  tx: Tx,
  principal: Principal,
  callId: string,
  input: z.output<typeof newNote>,
): Promise<Note> {
  const call = await getCall(tx, principal, callId);
  if (input.kind !== 'note') requireDesk(principal, 'write');
  return changeBuild(tx, principal, call.buildId, async ({ emit }) => {
    const { kind, body, restsOn, owner, due } = input;
    const seq = await emit(KEPT[kind], { callId, kind, body, restsOn, owner, due });
    const row = await tx
      .insertInto('note')
      .values(
        everyColumn<NoteTable>({
          shop_id: principal.shopId,
          build_id: call.buildId,
          call_id: callId,
          kind: input.kind,
          body: input.body,
          rests_on: input.restsOn,
          owner: input.owner,
          due: input.due ?? null,
          seq,
          ...author(principal),
        }),
      )
      .returning(['id', 'created_at'])
      .executeTakeFirstOrThrow();
    return {
      id: row.id,
      callId,
      ...input,
      due: input.due,
      doneAt: undefined,
      seq,
      by: principal.name,
      at: row.created_at,
    };
  });
}

/** Marks a promise as kept. */
export async function finishPromise(
  tx: Tx,
  principal: Principal,
  callId: string,
  noteId: string,
): Promise<void> {
  requireDesk(principal, 'write');
  const call = await getCall(tx, principal, callId);
  await changeBuild(tx, principal, call.buildId, async ({ emit }) => {
    const row = await tx
      .updateTable('note')
      .set({ done_at: sql`now()` })
      .where('shop_id', '=', principal.shopId)
      .where('call_id', '=', callId)
      .where('id', '=', noteId)
      .where('kind', '=', 'promise')
      .where('done_at', 'is', null)
      .returning('body')
      .executeTakeFirst();
    if (row === undefined) {
      const known = await tx
        .selectFrom('note')
        .select('id')
        .where('shop_id', '=', principal.shopId)
        .where('id', '=', noteId)
        .executeTakeFirst();
      throw known === undefined
        ? notFound('promise')
        : new Failure('conflict', 'this promise is done already');
    }
    await emit(NOTE_EVENTS['promise-done'], { callId, noteId, body: row.body });
  });
}

export const selectNotes = (tx: Tx) => tx.selectFrom('note').selectAll().orderBy('seq');

export const toNote = (row: Selectable<NoteTable>): Note => ({
  id: row.id,
  callId: row.call_id,
  kind: row.kind,
  body: row.body,
  restsOn: row.rests_on,
  owner: row.owner,
  due: row.due ?? undefined,
  doneAt: row.done_at ?? undefined,
  seq: row.seq,
  by: row.by_name,
  at: row.created_at,
});
