import { type Principal, requireBuild, requireDesk } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { readLast, readTogether, type Together } from '../../database/read-together.ts';
import { toEvent } from '../../events/build-events.ts';
import { notFound } from '../../problems/failure.ts';
import { toAnswer } from '../answers/answers.ts';
import { toArm } from '../arms/arms.ts';
import { toPlacement } from '../arms/placements.ts';
import { toBuild } from '../builds/builds.ts';
import { specAt, toRevision } from '../builds/revisions.ts';
import { seesCall, toCall } from '../calls/calls.ts';
import { toFamily } from '../catalogue/families.ts';
import { entriesOf } from '../corrections/entries.ts';
import { toLashLines } from '../lash-log/lash-log.ts';
import { limitsInForce } from '../limits/limits.ts';
import { toNote } from '../notes/notes.ts';
import { PART_READINGS } from '../part-readings/part-readings.ts';
import { toPhotograph } from '../photographs/photographs.ts';
import { READINGS } from '../readings/readings.ts';
import { toSetUp } from '../set-ups/set-ups.ts';
import { toStatement } from '../set-ups/statements.ts';
import { toShareLink } from '../share-links/share-links.ts';
import { SHEET_READINGS } from '../sheet/sheet-table.ts';
import { TIP_MARKS } from '../tip-marks/tip-mark-table.ts';
import { toWorking } from '../workings/workings.ts';
import type { BuildRecord } from './build-record.ts';
import { type CatalogueWanted, recordQueries, type WhichBuild } from './queries.ts';

/** The record of one build is read in whole; past this many lines the older ones are in the export. */
const MOST_EVENTS = 10_000;

export interface RecordWanted {
  /** Left out, where something was read of a part: what is said of a build rests on it. */
  readonly catalogue?: CatalogueWanted;
  readonly mostEvents?: number;
  /** Nothing is asked in this transaction any more: it is committed in the same message. */
  readonly last?: boolean;
}

/** What can be told without asking the server. */
function requireSight(principal: Principal, which: WhichBuild): void {
  if ('buildId' in which) requireBuild(principal, which.buildId, 'read');
  else if (principal.kind !== 'builder') requireDesk(principal, 'read');
  else if (!seesCall(principal, { id: which.callId })) throw notFound('call');
}

type Rows = Together<ReturnType<typeof recordQueries>>;

/** Reads everything of a build in one message. In a transaction that only reads it is all of one moment. */
export async function loadBuildRecord(
  tx: Tx,
  principal: Principal,
  which: WhichBuild,
  { catalogue = 'when-read', mostEvents = MOST_EVENTS, last = false }: RecordWanted = {},
): Promise<BuildRecord> {
  requireSight(principal, which);
  const queries = recordQueries(tx, principal, which, { mostEvents, catalogue });
  const rows = await (last ? readLast(tx, queries) : readTogether(tx, queries));
  const [row] = rows.build;
  if (row === undefined) throw notFound('buildId' in which ? 'build' : 'call');
  requireBuild(principal, row.id, 'read');
  return {
    ...toRecord(rows, row),
    calls: rows.calls.map(toCall).filter((call) => seesCall(principal, call)),
    catalogue: catalogue === 'no' ? undefined : rows.catalogue.map(toFamily),
  };
}

/** Likewise, as all that a request reads: the transaction is committed along with it. */
export const readBuildRecord = (
  tx: Tx,
  principal: Principal,
  which: WhichBuild,
  wanted: Omit<RecordWanted, 'last'> = {},
): Promise<BuildRecord> => loadBuildRecord(tx, principal, which, { ...wanted, last: true });

function toRecord(rows: Rows, build: Rows['build'][number]): Omit<BuildRecord, 'calls' | 'catalogue'> {
  const revisions = rows.revisions.map(toRevision);
  const sheetReadings = entriesOf(SHEET_READINGS, rows.sheetReadings);
  const statements = rows.setUpStatements.map(toStatement);
  return {
    build: toBuild(build, specAt(revisions, build.revision)),
    revisions,
    arms: rows.arms.map(toArm),
    placements: rows.placements.map(toPlacement),
    setUps: rows.setUps.map((row) => toSetUp(row, statements)),
    readings: entriesOf(READINGS, rows.readings),
    sheetReadings,
    partReadings: entriesOf(PART_READINGS, rows.partReadings),
    tipMarks: entriesOf(TIP_MARKS, rows.tipMarks),
    lashLines: toLashLines(sheetReadings, rows.lashRows),
    answers: rows.answers.map(toAnswer),
    workings: rows.workings.map(toWorking),
    photographs: rows.photographs.map(toPhotograph),
    notes: rows.notes.map(toNote),
    shareLinks: rows.shareLinks.map(toShareLink),
    events: rows.events.map(toEvent).reverse(),
    limits: limitsInForce(rows.limits),
    catalogueRatios: rows.catalogueRatios.map(({ nominal_ratio }) => nominal_ratio),
  };
}
