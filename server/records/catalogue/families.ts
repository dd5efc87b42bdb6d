import { type Selectable, sql } from 'kysely';
import { isPartFeature, PART_FEATURES, PART_SIZES } from '../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { type Principal, requireDesk } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { PartFamilyTable } from '../../database/tables/parts.ts';
import type { FeatureKind, SizeKind } from '../../mechanics/identify/kinds.ts';
import { notFound } from '../../problems/failure.ts';
import { SIZE_COLUMNS } from './columns.ts';

/** A line of the shop's catalogue. Sizes are those it is made for, inches; what is not known is left out. */
export interface PartFamily {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly fits: string;
  readonly nominalRatio: number | undefined;
  readonly weight: number;
  readonly sizes: Readonly<Partial<Record<SizeKind, number>>>;
  readonly features: Readonly<Partial<Record<FeatureKind, string>>>;
  readonly notes: string;
  readonly by: string;
  readonly changedAt: Date;
}

export type FamilyRow = Selectable<PartFamilyTable>;

export function toFamily(row: FamilyRow): PartFamily {
  return {
    id: row.id,
    code: row.code,
    name: row.name,
    fits: row.fits,
    nominalRatio: row.nominal_ratio ?? undefined,
    weight: row.weight,
    sizes: Object.fromEntries(
      keysOf(PART_SIZES).flatMap((kind) => {
        const size = row[SIZE_COLUMNS[kind]];
        return size === null ? [] : [[kind, size]];
      }),
    ),
    features: Object.fromEntries(
      keysOf(PART_FEATURES).flatMap((kind) =>
        isPartFeature(kind) && row[kind] !== '' ? [[kind, row[kind]]] : [],
      ),
    ),
    notes: row.notes,
    by: row.by_name,
    changedAt: row.changed_at,
  };
}

/** A page of the catalogue in the order of its codes; `search` looks in code, name, what it fits and notes. */
export async function listFamilies(
  tx: Tx,
  principal: Principal,
  options: {
    readonly search?: string | undefined;
    readonly after?: string | undefined;
    readonly limit: number;
  },
): Promise<PartFamily[]> {
  requireDesk(principal, 'read');
  const words = (options.search ?? '').trim().split(/\s+/).filter(Boolean).slice(0, 10);
  let query = tx.selectFrom('part_family').selectAll().where('shop_id', '=', principal.shopId);
  for (const word of words) {
    const pattern = `%${word.replace(/[\\%_]/g, '\\$&')}%`;
    query = query.where((either) =>
      either.or([
        either('code', 'ilike', pattern),
        either('name', 'ilike', pattern),
        either('fits', 'ilike', pattern),
        either('notes', 'ilike', pattern),
      ]),
    );
  }
  if (options.after !== undefined) query = query.where('code', '>', options.after);
  const rows = await query.orderBy('code').limit(options.limit).execute();
  return rows.map(toFamily);
}

export async function countFamilies(tx: Tx, principal: Principal): Promise<number> {
  requireDesk(principal, 'read');
  const { n } = await tx
    .selectFrom('part_family')
    .select(({ fn }) => fn.countAll<number>().as('n'))
    .where('shop_id', '=', principal.shopId)
    .executeTakeFirstOrThrow();
  return Number(n);
}

export async function getFamily(tx: Tx, principal: Principal, familyId: string): Promise<PartFamily> {
  requireDesk(principal, 'read');
  const row = await tx
    .selectFrom('part_family')
    .selectAll()
    .where('shop_id', '=', principal.shopId)
    .where('id', '=', familyId)
    .executeTakeFirst();
  if (row === undefined) throw notFound('part family');
  return toFamily(row);
}

/** The shop's catalogue as it is stored, by code. */
export const selectFamilies = (tx: Tx, shopId: string) =>
  tx.selectFrom('part_family').selectAll().where('shop_id', '=', shopId).orderBy('code');

/** Every row of it. */
export const familyRows = (tx: Tx, shopId: string): Promise<FamilyRow[]> =>
  selectFamilies(tx, shopId).execute();

/** What changes with every change of the shop's catalogue: how many lines, and when each was changed. */
export interface CatalogueState {
  readonly lines: number;
  readonly changed: number;
}

const LINES = sql<number>`count(*)`;
/** Whole microseconds, each less than 2^32 so that the sum is exact as a number. */
const CHANGED = sql<number>`coalesce(sum((date_part('epoch', changed_at) * 1e6)::bigint % 4294967291), 0)::bigint`;

export const selectCatalogueState = (tx: Tx, shopId: string) =>
  tx
    .selectFrom('part_family')
    .select([LINES.as('lines'), CHANGED.as('changed')])
    .where('shop_id', '=', shopId);

export const isInState = ({ lines, changed }: CatalogueState) =>
  sql<boolean>`${LINES} = ${lines} and ${CHANGED} = ${changed}`;

/** The nominal ratios of the shop's catalogue, each once, the smallest first. */
export const selectCatalogueRatios = (tx: Tx, shopId: string) =>
  tx
    .selectFrom('part_family')
    .select('nominal_ratio')
    .distinct()
    .where('shop_id', '=', shopId)
    .where('nominal_ratio', 'is not', null)
    .orderBy('nominal_ratio')
    .$narrowType<{ nominal_ratio: number }>();
