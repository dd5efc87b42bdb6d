import type { Selectable } from 'kysely';
import type { z } from 'zod';
import { author, type Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import type { PhotographTable } from '../../database/tables/record.ts';
import { changeBuild } from '../../events/change-build.ts';
import { rowOfBuild, rowsOfBuild } from '../../events/rows-of-build.ts';
import { Failure } from '../../problems/failure.ts';
import { PHOTOGRAPH_EVENTS } from './events.ts';
import type { newPhotograph } from './new-photograph.ts';
import type { CleanImage } from './re-encode.ts';

/** So many of one build: a report stays readable, and a link in wrong hands can't fill the disk. */
const MOST_OF_A_BUILD = 60;

export interface Photograph {
  readonly id: string;
  readonly shows: string;
  readonly caption: string;
  readonly readingId: string | undefined;
  readonly armId: string | undefined;
  readonly width: number;
  readonly height: number;
  readonly seq: number;
  readonly by: string;
  readonly at: Date;
}

const COLUMNS = [
  'id',
  'shows',
  'caption',
  'reading_id',
  'arm_id',
  'width',
  'height',
  'seq',
  'by_name',
  'created_at',
] as const;

/** All but the pictures themselves. */
export const selectPhotographs = (tx: Tx) => tx.selectFrom('photograph').select(COLUMNS).orderBy('seq');

export const toPhotograph = (
  row: Pick<Selectable<PhotographTable>, (typeof COLUMNS)[number]>,
): Photograph => ({
  id: row.id,
  shows: row.shows,
  caption: row.caption,
  readingId: row.reading_id ?? undefined,
  armId: row.arm_id ?? undefined,
  width: row.width,
  height: row.height,
  seq: row.seq,
  by: row.by_name,
  at: row.created_at,
});

export async function listPhotographs(tx: Tx, principal: Principal, buildId: string): Promise<Photograph[]> {
  return (await rowsOfBuild(tx, principal, buildId, selectPhotographs(tx))).map(toPhotograph);
}

async function refuseForeign(
  tx: Tx,
  principal: Principal,
  buildId: string,
  input: z.output<typeof newPhotograph>,
): Promise<void> {
  for (const [table, id] of [
    ['reading', input.readingId],
    ['arm', input.armId],
  ] as const) {
    if (id !== undefined) await rowOfBuild(principal, buildId, id, table, tx.selectFrom(table).select('id'));
  }
}

/** Keeps a photograph that has been made again. */
export async function keepPhotograph(
  tx: Tx,
  principal: Principal,
  buildId: string,
  input: z.output<typeof newPhotograph>,
  image: CleanImage,
): Promise<Photograph> {
  return changeBuild(tx, principal, buildId, async ({ emit }) => {
    await refuseForeign(tx, principal, buildId, input);
    const { count } = await tx
      .selectFrom('photograph')
      .select(({ fn }) => fn.countAll<number>().as('count'))
      .where('shop_id', '=', principal.shopId)
      .where('build_id', '=', buildId)
      .executeTakeFirstOrThrow();
    if (count >= MOST_OF_A_BUILD)
      throw new Failure('conflict', `a build has ${MOST_OF_A_BUILD} photographs at the most`);
    const id = crypto.randomUUID();
    const { shows, caption, readingId, armId } = input;
    const about = { photographId: id, shows, caption, readingId, armId };
    const seq = await emit(PHOTOGRAPH_EVENTS['photograph-kept'], about);
    const row = await tx
      .insertInto('photograph')
      .values(
        everyColumn<PhotographTable>({
          shop_id: principal.shopId,
          id,
          build_id: buildId,
          reading_id: input.readingId ?? null,
          arm_id: input.armId ?? null,
          shows: input.shows,
          caption: input.caption,
          width: image.width,
          height: image.height,
          jpeg: image.jpeg,
          seq,
          ...author(principal),
        }),
      )
      .returning('created_at')
      .executeTakeFirstOrThrow();
    return {
      id,
      shows,
      caption,
      readingId,
      armId,
      width: image.width,
      height: image.height,
      seq,
      by: principal.name,
      at: row.created_at,
    };
  });
}

export async function photographBytes(
  tx: Tx,
  principal: Principal,
  buildId: string,
  id: string,
): Promise<Buffer> {
  const { jpeg } = await rowOfBuild(
    principal,
    buildId,
    id,
    'photograph',
    tx.selectFrom('photograph').select('jpeg'),
  );
  return jpeg;
}
