import type { Selectable } from 'kysely';
import { isUnit, type Quantity } from '../../../shared/quantities/units.ts';
import type { CorrectPartReading, NewPartReading } from '../../../shared/schemas/part-reading.ts';
import { PART_KINDS } from '../../../shared/schemas/part-words.ts';
import { storedWord } from '../../../shared/schemas/words.ts';
import { author, type Principal, requireBuild } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import type { PartReadingTable } from '../../database/tables/parts.ts';
import { changeBuild } from '../../events/change-build.ts';
import { type Entry, listEntries, shown } from '../corrections/entries.ts';
import { replaceEntry } from '../corrections/replace.ts';
import { PART_READING_EVENTS } from './events.ts';
import { entryOf, isEmpty } from './part-entry.ts';

/** One thing read, seen or found written on the part, as it was entered. */
export interface PartReading extends Entry {
  readonly kind: keyof typeof PART_KINDS;
  readonly typed: string;
  /** A size; features and marks have none. */
  readonly size: Quantity | undefined;
  readonly word: string | undefined;
  readonly readAs: string;
  readonly place: string;
}

type Row = Selectable<PartReadingTable>;

function sizeOf({ value, unit }: Row): Quantity | undefined {
  if (value === null || unit === null) return undefined;
  if (!isUnit(unit)) throw new Error(`a stored reading has the unknown unit ${unit}`);
  return { value, unit };
}

/** What was read of a part, in the order of entry. */
export const PART_READINGS = {
  events: {
    replaced: PART_READING_EVENTS['part-reading-replaced'],
    struck: PART_READING_EVENTS['part-reading-struck'],
  },
  query: (tx: Tx) => tx.selectFrom('part_reading').selectAll().orderBy('seq'),
  show: (row: Row, entry: Entry): PartReading => ({
    ...entry,
    kind: storedWord(PART_KINDS, row.kind),
    typed: row.typed,
    size: sizeOf(row),
    word: row.word ?? undefined,
    readAs: row.read_as,
    place: row.place,
  }),
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
    const { kind, place } = input;
    const read = { kind, place, typed: entry.typed, readAs: entry.read_as };
    const seq = await emit(PART_READING_EVENTS['part-read'], read);
    const row = await tx
      .insertInto('part_reading')
      .values(
        everyColumn<PartReadingTable>({
          shop_id: principal.shopId,
          build_id: buildId,
          seq,
          kind,
          ...entry,
          place,
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
  return replaceEntry(PART_READINGS, tx, principal, correction, (old, was, said) => {
    const { place } = input;
    const entry = isEmpty(input) ? undefined : entryOf(old.kind, input);
    const struck = { kind: was.kind, ...said };
    return {
      struck,
      replaced:
        entry === undefined ? undefined : { ...struck, place, typed: entry.typed, readAs: entry.read_as },
      keep: (columns) => {
        const { id: _, created_at: __, ...same } = old;
        return tx
          .insertInto('part_reading')
          .values({ ...same, ...(entry === undefined ? {} : { ...entry, place }), ...columns })
          .returningAll()
          .executeTakeFirstOrThrow();
      },
    };
  });
}

/** Every reading of the part in the order of entry, replaced and struck ones included. */
export const listPartReadings = (tx: Tx, principal: Principal, buildId: string): Promise<PartReading[]> =>
  listEntries(PART_READINGS, tx, principal, buildId);
