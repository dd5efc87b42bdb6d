import { sql } from 'kysely';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { selectNewestEvents } from '../../events/build-events.ts';
import type { BuildQuery } from '../../events/rows-of-build.ts';
import { selectCalls } from '../calls/calls.ts';
import { selectCatalogueRatios, selectFamilies } from '../catalogue/families.ts';
import { selectLashRows } from '../lash-log/lash-log.ts';
import { selectLimits } from '../limits/limits.ts';
import { selectShareLinks } from '../share-links/share-links.ts';
import { queriesOf } from './record-part.ts';
import { RECORD_PARTS } from './record-parts.ts';

/** Which build: by its own id, or by that of a call about it. */
export type WhichBuild = { readonly buildId: string } | { readonly callId: string };

/** `when-read`: where something was read of a part, which alone needs it. */
export type CatalogueWanted = 'no' | 'when-read' | 'whole';

const never = sql<boolean>`false`;

function buildIdOf(shopId: string, which: WhichBuild) {
  return 'buildId' in which
    ? sql<string>`${which.buildId}`
    : sql<string>`(select build_id from call where shop_id = ${shopId} and id = ${which.callId})`;
}

function catalogueQuery(tx: Tx, shopId: string, which: WhichBuild, wanted: CatalogueWanted) {
  const families = selectFamilies(tx, shopId);
  if (wanted === 'whole') return families;
  if (wanted === 'no') return families.where(never);
  return families.where(({ exists, selectFrom }) =>
    exists(
      selectFrom('part_reading')
        .select('part_reading.id')
        .where('part_reading.shop_id', '=', shopId)
        .where('part_reading.build_id', '=', buildIdOf(shopId, which)),
    ),
  );
}

/** The rows of everything of a build, each query with the shop as a value: a distributed server finds them by it. */
export function recordQueries(
  tx: Tx,
  principal: Principal,
  which: WhichBuild,
  { mostEvents, catalogue }: { readonly mostEvents: number; readonly catalogue: CatalogueWanted },
) {
  const { shopId } = principal;
  const id = buildIdOf(shopId, which);
  const ofBuild = <Row>(query: BuildQuery<Row>): BuildQuery<Row> =>
    query.where('shop_id', '=', shopId).where('build_id', '=', id);
  return {
    build: tx.selectFrom('build').selectAll().where('shop_id', '=', shopId).where('id', '=', id),
    calls: ofBuild(selectCalls(tx)),
    ...queriesOf(RECORD_PARTS, tx, ofBuild),
    lashRows: ofBuild(selectLashRows(tx)),
    shareLinks: ofBuild(
      principal.kind === 'staff' ? selectShareLinks(tx) : selectShareLinks(tx).where(never),
    ),
    events: ofBuild(selectNewestEvents(tx, mostEvents)),
    limits: selectLimits(tx, shopId),
    catalogueRatios: selectCatalogueRatios(tx, shopId),
    catalogue: catalogueQuery(tx, shopId, which, catalogue),
  };
}
