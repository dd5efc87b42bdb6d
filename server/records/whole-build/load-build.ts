import { type Principal, requireBuild, requireDesk } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { readLast, readTogether, type Together } from '../../database/read-together.ts';
import { toEvent } from '../../events/build-events.ts';
import { notFound } from '../../problems/failure.ts';
import { toBuild } from '../builds/builds.ts';
import { specAt } from '../builds/revisions.ts';
import { type Call, seesCall, toCall } from '../calls/calls.ts';
import { catalogueOfRows, type KeptCatalogue, keptCatalogue } from '../catalogue/kept-catalogue.ts';
import { toLashLines } from '../lash-log/lash-log.ts';
import { limitsInForce } from '../limits/limits.ts';
import { onTheirDials } from '../readings/on-its-dial.ts';
import { withStatements } from '../set-ups/set-ups.ts';
import { toStatement } from '../set-ups/statements.ts';
import { toShareLink } from '../share-links/share-links.ts';
import type { BuildRecord, ToldOfStop } from './build-record.ts';
import { type CatalogueWanted, recordQueries, type WhichBuild } from './queries.ts';
import { itemsOf } from './record-part.ts';
import { RECORD_PARTS } from './record-parts.ts';

/** The record of one build is read in whole; past this many lines the older ones are in the export. */
const MOST_EVENTS = 10_000;

export interface RecordWanted {
  /** Left out, where something was read of a part: what is said of a build rests on it. */
  readonly catalogue?: CatalogueWanted;
  readonly mostEvents?: number;
  /** Nothing is asked in this transaction any more: it is committed in the same message. */
  readonly last?: boolean;
  /** What the reader must be allowed: a command reads what it has left behind by the right to write. */
  readonly access?: 'read' | 'write';
}

/** What can be told without asking the server. */
function requireSight(principal: Principal, which: WhichBuild, access: 'read' | 'write'): void {
  if ('buildId' in which) requireBuild(principal, which.buildId, access);
  else if (principal.kind !== 'builder') requireDesk(principal, access);
  else if (!seesCall(principal, { id: which.callId })) throw notFound('call');
}

type Rows = Together<ReturnType<typeof recordQueries>>;

/** Reads everything of a build in one message. In a transaction that only reads it is all of one moment. */
export async function loadBuildRecord(
  tx: Tx,
  principal: Principal,
  which: WhichBuild,
  { catalogue = 'when-read', mostEvents = MOST_EVENTS, last = false, access = 'read' }: RecordWanted = {},
): Promise<BuildRecord> {
  requireSight(principal, which, access);
  const known = keptCatalogue(principal.shopId);
  const queries = recordQueries(tx, principal, which, { mostEvents, catalogue, known });
  const rows = await (last ? readLast(tx, queries) : readTogether(tx, queries));
  const [row] = rows.build;
  if (row === undefined) throw notFound('buildId' in which ? 'build' : 'call');
  requireBuild(principal, row.id, access);
  const calls = rows.calls.map(toCall);
  return {
    ...toRecord(rows, row),
    calls: calls.filter((call) => seesCall(principal, call)),
    told: calls.filter(({ held, contact }) => held || contact === 'something').map(toldOf),
    catalogue: catalogueIn(rows, principal, catalogue, known),
  };
}

function catalogueIn(
  { catalogue: rows, catalogueState: states }: Rows,
  { shopId }: Principal,
  wanted: CatalogueWanted,
  known: KeptCatalogue | undefined,
): BuildRecord['catalogue'] {
  if (wanted === 'no') return undefined;
  return catalogueOfRows(shopId, { states, rows }, known);
}

/** Likewise, as all that a request reads: the transaction is committed along with it. */
export const readBuildRecord = (
  tx: Tx,
  principal: Principal,
  which: WhichBuild,
  wanted: Omit<RecordWanted, 'last'> = {},
): Promise<BuildRecord> => loadBuildRecord(tx, principal, which, { ...wanted, last: true });

const toldOf = ({ id, held, holdReason, contact }: Call): ToldOfStop => ({ id, held, holdReason, contact });

function toRecord(
  rows: Rows,
  build: Rows['build'][number],
): Omit<BuildRecord, 'calls' | 'told' | 'catalogue'> {
  const items = itemsOf(RECORD_PARTS, rows);
  const statements = rows.setUpStatements.map(toStatement);
  const setUps = items.setUps.map((setUp) => withStatements(setUp, statements));
  return {
    ...items,
    build: toBuild(build, specAt(items.revisions, build.revision)),
    setUps,
    readings: onTheirDials(items.readings, setUps),
    lashLines: toLashLines(items.sheetReadings, rows.lashRows),
    shareLinks: rows.shareLinks.map(toShareLink),
    events: rows.events.map(toEvent).reverse(),
    limits: limitsInForce(rows.limits),
    catalogueRatios: rows.catalogueRatios.map(({ nominal_ratio }) => nominal_ratio),
  };
}
