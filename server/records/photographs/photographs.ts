import { z } from 'zod';
import { choice } from '../../../shared/schemas/fields.ts';
import { words } from '../../../shared/schemas/texts.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { author, type Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { changeBuild } from '../../events/change-build.ts';
import { rowOfBuild, rowsOfBuild } from '../../events/rows-of-build.ts';
import { Failure } from '../../problems/failure.ts';
import type { CleanImage } from './re-encode.ts';

export const SHOWS = {
  'ratio-stamp': 'What looks like a ratio on the part',
  'other-number': 'Another number or letter on the part',
  'box-label': 'The box or its label',
  part: 'The part',
  'tip-mark': 'The mark on the valve tip',
  dial: 'The dial',
  'something-else': 'Something else',
} as const;

export const newPhotograph = z.strictObject({
  shows: choice(keysOf(SHOWS), 'what the photograph shows'),
  caption: words('what to look at', 300).default(''),
  readingId: z.uuid().optional().meta({ description: 'the reading it proves' }),
  armId: z.uuid().optional().meta({ description: 'the arm it shows' }),
});

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

export async function listPhotographs(tx: Tx, principal: Principal, buildId: string): Promise<Photograph[]> {
  const rows = await rowsOfBuild(
    tx,
    principal,
    buildId,
    tx.selectFrom('photograph').select(COLUMNS).orderBy('seq'),
  );
  return rows.map((row) => ({
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
  }));
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
    const seq = await emit('photograph-kept', { photographId: id, ...input });
    const row = await tx
      .insertInto('photograph')
      .values({
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
      })
      .returning('created_at')
      .executeTakeFirstOrThrow();
    const { shows, caption, readingId, armId } = input;
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
