import { randomUUID } from 'node:crypto';
import type { Selectable } from 'kysely';
import type { z } from 'zod';
import type { newHandPart, sayHandPart } from '../../../shared/schemas/part-reading.ts';
import { author, type Principal, requireBuild } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import type { PartInHandTable } from '../../database/tables/parts.ts';
import { changeBuild } from '../../events/change-build.ts';
import { rowOfBuild } from '../../events/rows-of-build.ts';
import { Failure, notFound } from '../../problems/failure.ts';
import { PART_READING_EVENTS } from './events.ts';

/** A part in the hand, as it was last called. The first of a build has no id, and no name until it is given one. */
export interface HandPart {
  readonly id: string | undefined;
  readonly name: string;
  readonly armId: string | undefined;
  /** The line that said so last. */
  readonly seq: number;
  readonly by: string;
  readonly at: Date;
}

type Row = Selectable<PartInHandTable>;

export const selectHandParts = (tx: Tx) => tx.selectFrom('part_in_hand').selectAll().orderBy('seq');

/** Parts in the order in which they were first named; of a part its last row counts. */
export function toHandParts(rows: readonly Row[]): HandPart[] {
  const parts = new Map<string | null, HandPart>();
  for (const row of rows) {
    const [id, first] = [row.part_id ?? undefined, parts.get(row.part_id)];
    const said = { id, name: row.name, armId: row.arm_id ?? undefined };
    parts.set(row.part_id, { ...first, ...said, seq: row.seq, by: row.by_name, at: row.created_at });
  }
  return [...parts.values()];
}

/** The part of this build with that id, as it is called now. */
export async function handPartOf(
  tx: Tx,
  principal: Principal,
  buildId: string,
  partId: string | undefined,
): Promise<HandPart | undefined> {
  const rows = await selectHandParts(tx)
    .where('shop_id', '=', principal.shopId)
    .where('build_id', '=', buildId)
    .execute();
  const found = toHandParts(rows).find(({ id }) => id === partId?.toLowerCase());
  if (found === undefined && partId !== undefined) throw notFound('part');
  return found;
}

interface Statement {
  readonly name: string;
  readonly armId?: string | undefined;
}

async function keepStatement(
  tx: Tx,
  principal: Principal,
  buildId: string,
  /** Of a part that is new its own id, which its first row has too. */
  part: { readonly id: string | undefined; readonly isNew: boolean },
  { name, armId }: Statement,
): Promise<HandPart> {
  return changeBuild(tx, principal, buildId, async ({ emit }) => {
    const arm =
      armId === undefined
        ? undefined
        : await rowOfBuild(principal, buildId, armId, 'arm', tx.selectFrom('arm').select('name'));
    const rows = await selectHandParts(tx)
      .where('shop_id', '=', principal.shopId)
      .where('build_id', '=', buildId)
      .execute();
    const parts = toHandParts(rows);
    if (parts.some((other) => other.id !== part.id && other.name === name.trim()))
      throw new Failure('conflict', `this build already has a part in the hand called “${name.trim()}”`);
    const was = parts.find(({ id }) => id === part.id)?.name ?? '';
    const said = { partId: part.id, name: name.trim(), was, armId, arm: arm?.name ?? '' };
    const seq = await emit(PART_READING_EVENTS['part-in-hand-named'], said);
    const row = await tx
      .insertInto('part_in_hand')
      .values({
        ...(part.isNew && part.id !== undefined ? { id: part.id } : {}),
        ...everyColumn<PartInHandTable>({
          shop_id: principal.shopId,
          build_id: buildId,
          part_id: part.id ?? null,
          name: name.trim(),
          arm_id: armId ?? null,
          seq,
          ...author(principal),
        }),
      })
      .returning('created_at')
      .executeTakeFirstOrThrow();
    return { id: part.id, name: name.trim(), armId, seq, by: principal.name, at: row.created_at };
  });
}

/** One more part in the hand. */
export function addHandPart(
  tx: Tx,
  principal: Principal,
  buildId: string,
  input: z.output<typeof newHandPart>,
): Promise<HandPart> {
  requireBuild(principal, buildId, 'write');
  return keepStatement(tx, principal, buildId, { id: randomUUID(), isNew: true }, input);
}

/** What a part is called and which arm it is, from now on; its readings stay its own. */
export async function nameHandPart(
  tx: Tx,
  principal: Principal,
  buildId: string,
  { partId, ...said }: z.output<typeof sayHandPart>,
): Promise<HandPart> {
  requireBuild(principal, buildId, 'write');
  const part = await handPartOf(tx, principal, buildId, partId);
  return keepStatement(tx, principal, buildId, { id: part?.id, isNew: false }, said);
}
