import type { Selectable } from 'kysely';
import type { z } from 'zod';
import { isUnit, type Quantity, type Unit } from '../../../shared/quantities/units.ts';
import type { correctReading, newReading } from '../../../shared/schemas/commands.ts';
import type { Entered } from '../../../shared/schemas/entered.ts';
import { READING_KINDS, storedWord } from '../../../shared/schemas/words.ts';
import { author, type Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import type { ReadingTable } from '../../database/tables/measuring.ts';
import { changeBuild } from '../../events/change-build.ts';
import { Failure, notFound } from '../../problems/failure.ts';
import { mayBeStopped, type TurningCheck } from '../calls/stop-signs.ts';
import { type Entry, listEntries, shown } from '../corrections/entries.ts';
import { replaceEntry } from '../corrections/replace.ts';
import { listSetUps } from '../set-ups/set-ups.ts';
import { isStruck, STRUCK } from '../set-ups/struck.ts';
import { READING_EVENTS } from './events.ts';
import { lengthReader } from './in-turns.ts';
import { onTheirDials } from './on-its-dial.ts';

/** One reading of a pass, as it was entered. */
export interface Reading extends Entry {
  readonly setUpId: string;
  readonly kind: keyof typeof READING_KINDS;
  readonly pass: number;
  readonly peak: Entered;
  readonly zeroReturn: (Quantity & { readonly typed: string }) | undefined;
  /** The lobe lift at which the valve was read; left out at full lift. */
  readonly atLobeLift: Entered | undefined;
  /** The small hand was read, and which way the hand ran. */
  readonly counted: boolean;
}

function unitOf(text: string): Unit {
  if (isUnit(text)) return text;
  throw new Error(`a stored reading has the unknown unit ${text}`);
}

type StationColumns = Pick<Selectable<ReadingTable>, 'at_typed' | 'at_value' | 'at_unit' | 'at_read_as'>;

function stationOf({ at_typed, at_value, at_unit, at_read_as }: StationColumns): Entered | undefined {
  if (at_value === null || at_unit === null) return undefined;
  return { typed: at_typed ?? '', value: at_value, unit: unitOf(at_unit), readAs: at_read_as ?? '' };
}

const stationColumns = (at: Entered | undefined): StationColumns => ({
  at_typed: at?.typed ?? null,
  at_value: at?.value ?? null,
  at_unit: at?.unit ?? null,
  at_read_as: at?.readAs ?? null,
});

/** The readings on the engine, in the order of entry. */
export const READINGS = {
  events: { replaced: READING_EVENTS['reading-replaced'], struck: READING_EVENTS['reading-struck'] },
  query: (tx: Tx) => tx.selectFrom('reading').selectAll().orderBy('seq'),
  show: (row: Selectable<ReadingTable>, entry: Entry): Reading => ({
    ...entry,
    setUpId: row.set_up_id,
    kind: storedWord(READING_KINDS, row.kind),
    pass: row.pass,
    peak: { typed: row.typed, value: row.value, unit: unitOf(row.unit), readAs: row.read_as },
    zeroReturn:
      row.zero_value === null || row.zero_unit === null
        ? undefined
        : { value: row.zero_value, unit: unitOf(row.zero_unit), typed: row.zero_typed ?? '' },
    atLobeLift: stationOf(row),
    counted: row.counted,
  }),
};

function columnsOf(peak: Entered, zeroReturn: Entered | undefined) {
  return {
    typed: peak.typed,
    value: peak.value,
    unit: peak.unit,
    read_as: peak.readAs,
    zero_typed: zeroReturn?.typed ?? null,
    zero_value: zeroReturn?.value ?? null,
    zero_unit: zeroReturn?.unit ?? null,
  };
}

/** Keeps a reading of a pass, as entered. */
export async function keepReading(
  tx: Tx,
  principal: Principal,
  buildId: string,
  setUpId: string,
  input: z.output<typeof newReading>,
  refuseTurning: TurningCheck,
): Promise<Reading> {
  return changeBuild(tx, principal, buildId, async ({ emit }) => {
    const { pass, stopped } = await passFor(tx, principal, buildId, setUpId, input);
    // A lift that is only stated was read before, or by nobody: it takes no turning.
    if (stopped && !input.kind.startsWith('stated-')) await refuseTurning(tx, principal, buildId);
    const length = await lengthReader(tx, principal, { buildId, setUpId }, input);
    const peak = length('peak', input.peak);
    const zeroReturn = input.zeroReturn && length('zeroReturn', input.zeroReturn);
    const atLobeLift = input.atLobeLift && length('atLobeLift', input.atLobeLift);
    const seq = await emit(READING_EVENTS['reading-kept'], {
      setUpId,
      kind: input.kind,
      pass,
      typed: peak.typed,
      readAs: peak.readAs,
      ...(zeroReturn === undefined ? {} : { zeroReturn: zeroReturn.readAs }),
      ...(atLobeLift === undefined ? {} : { atLobeLift: atLobeLift.readAs }),
      ...(input.counted === true ? { counted: input.counted } : {}),
    });
    const row = await tx
      .insertInto('reading')
      .values(
        everyColumn<ReadingTable>({
          shop_id: principal.shopId,
          build_id: buildId,
          set_up_id: setUpId,
          seq,
          kind: input.kind,
          pass,
          ...columnsOf(peak, zeroReturn),
          ...stationColumns(atLobeLift),
          counted: input.counted ?? false,
          replaces: null,
          ...author(principal),
        }),
      )
      .returningAll()
      .executeTakeFirstOrThrow();
    return shown(READINGS, row);
  });
}

/**
 * The pass of a new reading, once its set-up is there, and whether anything could stop its build. Asked in one: each
 * question by itself is a wait for the server.
 */
async function passFor(
  tx: Tx,
  principal: Principal,
  buildId: string,
  setUpId: string,
  { pass, kind }: z.output<typeof newReading>,
): Promise<{ readonly pass: number; readonly stopped: boolean }> {
  const found = await tx
    .selectFrom('set_up')
    .select([mayBeStopped(principal, buildId).as('stopped'), isStruck(principal).as('struck')])
    .$if(pass === undefined, (query) =>
      query.select(({ selectFrom }) =>
        selectFrom('reading')
          .select(({ fn }) => fn.max('reading.pass').as('last'))
          .where('reading.shop_id', '=', principal.shopId)
          .where('reading.set_up_id', '=', setUpId)
          .where('reading.kind', '=', kind)
          .as('last'),
      ),
    )
    .where('shop_id', '=', principal.shopId)
    .where('build_id', '=', buildId)
    .where('id', '=', setUpId)
    .executeTakeFirst();
  if (found === undefined) throw notFound('set-up');
  if (found.struck) throw new Failure('conflict', STRUCK);
  const next = pass ?? (found.last ?? 0) + 1;
  if (next > 99) throw new Failure('conflict', 'this set-up has its 99 passes; start a new one');
  return { pass: next, stopped: found.stopped };
}

/** The number of the next pass of a kind in a set-up. */
async function nextPass(
  tx: Tx,
  { shopId }: Principal,
  { setUpId }: Reading,
  kind: Reading['kind'],
): Promise<number> {
  const { last } = await tx
    .selectFrom('reading')
    .select(({ fn }) => fn.max('pass').as('last'))
    .where('shop_id', '=', shopId)
    .where('set_up_id', '=', setUpId)
    .where('kind', '=', kind)
    .executeTakeFirstOrThrow();
  const next = (last ?? 0) + 1;
  if (next > 99) throw new Failure('conflict', 'this set-up has its 99 passes of that kind');
  return next;
}

type Correction = z.output<typeof correctReading>;

/** A reading that was kept as something else becomes the next pass of what it was; its figure stays unless given. */
async function otherKind(tx: Tx, principal: Principal, buildId: string, was: Reading, input: Correction) {
  const { kind = was.kind } = input;
  const length = await lengthReader(tx, principal, { buildId, setUpId: was.setUpId }, input);
  const peak = input.peak === undefined ? was.peak : length('peak', input.peak);
  const atLobeLift = input.atLobeLift && length('atLobeLift', input.atLobeLift);
  const zero = input.zeroReturn && length('zeroReturn', input.zeroReturn);
  const pass = kind === was.kind ? was.pass : await nextPass(tx, principal, was, kind);
  return {
    said: { kind, pass, typed: peak.typed, readAs: peak.readAs },
    columns: {
      kind,
      pass,
      ...(input.peak === undefined && zero === undefined ? {} : columnsOf(peak, zero)),
      ...(kind === was.kind && atLobeLift === undefined ? {} : stationColumns(atLobeLift)),
    },
    at: kind === 'valve-lift-at' ? (atLobeLift ?? was.atLobeLift) : undefined,
  };
}

/** Replaces a reading, or strikes it out, with the reason; the old one stays where it was. */
export async function replaceReading(
  tx: Tx,
  principal: Principal,
  buildId: string,
  readingId: string,
  input: Correction,
): Promise<Reading> {
  const { reason } = input;
  const strikes = input.peak === undefined && input.kind === undefined;
  return replaceEntry(READINGS, tx, principal, { buildId, id: readingId, reason }, async (old, was, said) => {
    const { setUpId, kind, pass } = was;
    const at = old.at_read_as === null ? {} : { atLobeLift: old.at_read_as };
    const struck = { setUpId, kind, pass, ...at, ...said };
    const now = strikes ? undefined : await otherKind(tx, principal, buildId, was, input);
    return {
      struck,
      replaced: now && {
        setUpId,
        ...said,
        ...now.said,
        ...(now.at === undefined ? {} : { atLobeLift: now.at.readAs }),
        ...(now.said.kind === kind ? {} : { wasKind: kind }),
      },
      keep: (columns) => {
        const { id: _, created_at: __, ...same } = old;
        return tx
          .insertInto('reading')
          .values({ ...same, ...now?.columns, ...columns })
          .returningAll()
          .executeTakeFirstOrThrow();
      },
    };
  });
}

/** Every reading of a build in the order of entry, turns on the dial that is known now; also replaced and struck ones. */
export async function listReadings(tx: Tx, principal: Principal, buildId: string): Promise<Reading[]> {
  const readings = await listEntries(READINGS, tx, principal, buildId);
  return onTheirDials(readings, await listSetUps(tx, principal, buildId));
}
