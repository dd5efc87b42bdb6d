import { sql } from 'kysely';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { selectNewestEvents } from '../../events/build-events.ts';
import type { BuildQuery } from '../../events/rows-of-build.ts';
import { selectCalls } from '../calls/calls.ts';
import { selectCatalogueRatios, selectCatalogueState } from '../catalogue/families.ts';
import { type KeptCatalogue, selectUnknown } from '../catalogue/kept-catalogue.ts';
import { selectLashRows } from '../lash-log/lash-log.ts';
import { selectLimits } from '../limits/limits.ts';
import { selectStatements } from '../set-ups/statements.ts';
import { selectShareLinks } from '../share-links/share-links.ts';
import { queriesOf } from './record-part.ts';
import { RECORD_PARTS } from './record-parts.ts';

/** Which build: by its own id, or by that of a call about it. */
export type WhichBuild = { readonly buildId: string } | { readonly callId: string };

/** `when-read`: where something was read of a part, which alone needs it. */
export type CatalogueWanted = 'no' | 'when-read' | 'whole';

interface RecordOptions {
  readonly mostEvents: number;
  readonly catalogue: CatalogueWanted;
  /** The catalogue as this process has it: its rows come only where the shop's is another. */
  readonly known: KeptCatalogue | undefined;
}

const never = sql<boolean>`false`;

function buildIdOf(shopId: string, which: WhichBuild) {
  return 'buildId' in which
    ? sql<string>`${which.buildId}`
    : sql<string>`(select build_id from call where shop_id = ${shopId} and id = ${which.callId})`;
}

/** Whether the catalogue is asked for at all, as a condition of its queries. */
function wantsCatalogue(tx: Tx, shopId: string, which: WhichBuild, wanted: CatalogueWanted) {
  if (wanted === 'whole') return sql<boolean>`true`;
  if (wanted === 'no') return never;
  const id = buildIdOf(shopId, which);
  const readOfPart = tx
    .selectFrom('part_reading')
    .select('part_reading.id')
    .where('part_reading.shop_id', '=', shopId)
    .where('part_reading.build_id', '=', id);
  // A family that the rockers are sold under has its ratio in the catalogue.
  const soldUnder = tx
    .selectFrom('build_revision')
    .select('build_revision.revision')
    .where('build_revision.shop_id', '=', shopId)
    .where('build_revision.build_id', '=', id)
    .where(sql<boolean>`build_revision.spec #> '{rockers,family}' is not null`);
  return sql<boolean>`(exists (${readOfPart}) or exists (${soldUnder}))`;
}

/** The rows of everything of a build, each query with the shop as a value: a distributed server finds them by it. */
export function recordQueries(
  tx: Tx,
  principal: Principal,
  which: WhichBuild,
  { mostEvents, catalogue, known }: RecordOptions,
) {
  const { shopId } = principal;
  const id = buildIdOf(shopId, which);
  const wanted = wantsCatalogue(tx, shopId, which, catalogue);
  const ofBuild = <Row>(query: BuildQuery<Row>): BuildQuery<Row> =>
    query.where('shop_id', '=', shopId).where('build_id', '=', id);
  return {
    build: tx.selectFrom('build').selectAll().where('shop_id', '=', shopId).where('id', '=', id),
    calls: ofBuild(selectCalls(tx)),
    ...queriesOf(RECORD_PARTS, tx, ofBuild),
    setUpStatements: ofBuild(selectStatements(tx)),
    lashRows: ofBuild(selectLashRows(tx)),
    shareLinks: ofBuild(
      principal.kind === 'staff' ? selectShareLinks(tx) : selectShareLinks(tx).where(never),
    ),
    events: ofBuild(selectNewestEvents(tx, mostEvents)),
    limits: selectLimits(tx, shopId),
    catalogueRatios: selectCatalogueRatios(tx, shopId),
    catalogueState: selectCatalogueState(tx, shopId).where(wanted),
    catalogue: selectUnknown(tx, shopId, known).where(wanted),
  };
}
