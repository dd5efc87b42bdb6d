import type { z } from 'zod';
import type { UnitSystem } from '../../shared/quantities/units.ts';
import { author, type Principal, requireBuild } from '../auth/principal.ts';
import type { Tx } from '../database/database.ts';
import { EVENT_CHANNEL } from '../database/event-channel.ts';
import { notifyAtCommit } from '../database/statements.ts';
import { notFound } from '../problems/failure.ts';
import type { EventDefinition } from './define-events.ts';
import { note, noted } from './tx-notes.ts';

/** Takes an event for the record, written when the work is done; answers its sequence number in the build. */
export type Emit = <Data extends z.ZodObject>(
  event: EventDefinition<string, Data>,
  data: NoInfer<z.output<Data>>,
) => Promise<number>;

/** One command on one build: its transaction, the locked build, and the events it leaves. */
interface Command {
  readonly tx: Tx;
  readonly principal: Principal;
  readonly build: {
    readonly id: string;
    readonly label: string;
    readonly revision: number;
    readonly version: number;
    readonly units: UnitSystem;
  };
  readonly emit: Emit;
}

interface Line {
  readonly seq: number;
  readonly kind: string;
  readonly data: object;
}

/** Writes the events of a command and how far the build has come, in one statement, and says so to the others. */
async function record(tx: Tx, principal: Principal, buildId: string, lines: readonly Line[]): Promise<void> {
  const last = lines.at(-1);
  if (last === undefined) return;
  const { typedAt, beforeStop } = noted(tx);
  await tx
    .with('counted', (from) =>
      from
        .updateTable('build')
        .set({ last_seq: last.seq })
        .where('shop_id', '=', principal.shopId)
        .where('id', '=', buildId),
    )
    .insertInto('event')
    .values(
      lines.map(({ seq, kind, data }) => ({
        shop_id: principal.shopId,
        build_id: buildId,
        seq,
        kind,
        data: JSON.stringify(data),
        typed_at: typedAt ?? null,
        before_stop: beforeStop ?? false,
        ...author(principal),
      })),
    )
    .execute();
  note(tx, { kept: last.seq });
  notifyAtCommit(tx, EVENT_CHANNEL, `${buildId} ${last.seq}`);
}

/**
 * Runs a command on a build inside `tx`. The build row is locked first, so that the build's events come in the
 * order in which their commands commit.
 */
export async function changeBuild<T>(
  tx: Tx,
  principal: Principal,
  buildId: string,
  work: (command: Command) => Promise<T>,
): Promise<T> {
  requireBuild(principal, buildId, 'write');
  const row = await tx
    .selectFrom('build')
    .select(['id', 'label', 'revision', 'last_seq', 'units'])
    .where('shop_id', '=', principal.shopId)
    .where('id', '=', buildId)
    .forUpdate()
    .executeTakeFirst();
  if (row === undefined) throw notFound('build');
  const lines: Line[] = [];
  const answer = await work({
    tx,
    principal,
    build: { id: row.id, label: row.label, revision: row.revision, version: row.last_seq, units: row.units },
    emit: async ({ name }, data) => {
      const seq = row.last_seq + lines.length + 1;
      lines.push({ seq, kind: name, data });
      return seq;
    },
  });
  await record(tx, principal, buildId, lines);
  return answer;
}
