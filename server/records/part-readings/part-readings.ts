import type { Selectable } from 'kysely';
import type { Quantity } from '../../../shared/quantities/units.ts';
import type { Entered } from '../../../shared/schemas/entered.ts';
import type { CorrectPartReading, NewPartReading } from '../../../shared/schemas/part-reading.ts';
import { PART_KINDS, PART_TOOLS, type PartTool } from '../../../shared/schemas/part-words.ts';
import { storedWord } from '../../../shared/schemas/words.ts';
import { author, type Principal, requireBuild } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import type { PartReadingTable } from '../../database/tables/parts.ts';
import { changeBuild } from '../../events/change-build.ts';
import { type Entry, listEntries, shown } from '../corrections/entries.ts';
import { replaceEntry } from '../corrections/replace.ts';
import { PART_READING_EVENTS } from './events.ts';
import { handPartOf } from './hand-parts.ts';
import { entryOf, isEmpty } from './part-entry.ts';
import { correctedHow, howOf, quantityOf, withinColumns, withinOf } from './read-how.ts';

/** One thing read, seen or found written on the part, as it was entered. */
export interface PartReading extends Entry {
  readonly kind: keyof typeof PART_KINDS;
  /** Which part in the hand; the first of a build has no id. */
  readonly partId: string | undefined;
  readonly typed: string;
  /** A size; features and marks have none. */
  readonly size: Quantity | undefined;
  readonly word: string | undefined;
  readonly readAs: string;
  readonly place: string;
  readonly tool: PartTool;
  /** How far off it may be, where that was typed. */
  readonly within: Entered | undefined;
  /** Threads that the length goes over. */
  readonly count: number | undefined;
  /** Tool and half-width as they are read out. */
  readonly how: string;
}

type Row = Selectable<PartReadingTable>;

type HowColumns = Omit<Row, 'id' | 'created_at'>;

const howIn = (row: HowColumns) => ({
  tool: storedWord(PART_TOOLS, row.tool),
  within: withinOf(row),
  count: row.thread_count ?? undefined,
});

const howOfRow = (row: HowColumns): string => howOf(row.kind, quantityOf(row.value, row.unit), howIn(row));

function shownRow(row: Row, entry: Entry): PartReading {
  const kind = storedWord(PART_KINDS, row.kind);
  const size = quantityOf(row.value, row.unit);
  return {
    ...entry,
    kind,
    partId: row.part_id ?? undefined,
    typed: row.typed,
    size,
    word: row.word ?? undefined,
    readAs: row.read_as,
    place: row.place,
    ...howIn(row),
    how: howOfRow(row),
  };
}

/** What was read of a part, in the order of entry. */
export const PART_READINGS = {
  events: {
    replaced: PART_READING_EVENTS['part-reading-replaced'],
    struck: PART_READING_EVENTS['part-reading-struck'],
  },
  query: (tx: Tx) => tx.selectFrom('part_reading').selectAll().orderBy('seq'),
  show: shownRow,
};

/** Keeps a reading of the part: it is off the engine, so a stop closes nothing of it. */
export async function keepPartReading(
  tx: Tx,
  principal: Principal,
  buildId: string,
  input: NewPartReading,
): Promise<PartReading> {
  requireBuild(principal, buildId, 'write');
  const entry = entryOf(input.kind, input);
  return changeBuild(tx, principal, buildId, async ({ emit }) => {
    const { kind, place, tool, within, count } = input;
    const part = await handPartOf(tx, principal, buildId, input.partId);
    const of = { kind, partId: part?.id, part: part?.name ?? '' };
    const how = howOf(kind, input.size, { tool, within, count });
    const read = { ...of, place, typed: entry.typed, readAs: entry.read_as, how };
    const seq = await emit(PART_READING_EVENTS['part-read'], read);
    const row = await tx
      .insertInto('part_reading')
      .values(
        everyColumn<PartReadingTable>({
          shop_id: principal.shopId,
          build_id: buildId,
          seq,
          kind,
          part_id: part?.id ?? null,
          ...entry,
          place,
          tool,
          ...withinColumns(within),
          replaces: null,
          struck: false,
          reason: '',
          ...author(principal),
        }),
      )
      .returningAll()
      .executeTakeFirstOrThrow();
    return shown(PART_READINGS, row);
  });
}

/** Replaces a reading, or strikes it out, with the reason; the old one stays where it was. */
export async function replacePartReading(
  tx: Tx,
  principal: Principal,
  buildId: string,
  readingId: string,
  input: CorrectPartReading,
): Promise<PartReading> {
  const correction = { buildId, id: readingId, reason: input.reason };
  return replaceEntry(PART_READINGS, tx, principal, correction, async (old, was, said) => {
    const { place } = input;
    const part = await handPartOf(tx, principal, buildId, was.partId);
    const entry = isEmpty(input) ? undefined : entryOf(old.kind, input);
    const struck = { kind: was.kind, partId: was.partId, part: part?.name ?? '', ...said };
    const { id: _, created_at: __, ...same } = old;
    const row = entry === undefined ? same : { ...same, ...entry, place, ...correctedHow(old, input) };
    return {
      struck,
      replaced:
        entry === undefined
          ? undefined
          : { ...struck, place, typed: entry.typed, readAs: entry.read_as, how: howOfRow(row) },
      keep: (columns) =>
        tx
          .insertInto('part_reading')
          .values({ ...row, ...columns })
          .returningAll()
          .executeTakeFirstOrThrow(),
    };
  });
}

/** Every reading of the part in the order of entry, replaced and struck ones included. */
export const listPartReadings = (tx: Tx, principal: Principal, buildId: string): Promise<PartReading[]> =>
  listEntries(PART_READINGS, tx, principal, buildId);
