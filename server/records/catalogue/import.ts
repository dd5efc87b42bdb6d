import { type Insertable, sql, type Updateable } from 'kysely';
import type { z } from 'zod';
import { memberOf } from '../../../shared/member.ts';
import { InputFaults } from '../../../shared/problems/faults.ts';
import type { importCatalogue as importInput } from '../../../shared/schemas/catalogue.ts';
import { author, type Principal, requireAdministrator, requireDesk } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { PartFamilyTable } from '../../database/tables/parts.ts';
import { type FamilyRow, familyRows } from './families.ts';
import { type FileRow, type RowFault, readFile } from './read-file.ts';

export interface Loaded {
  /** Rows below the header. */
  readonly rows: number;
  readonly added: number;
  readonly changed: number;
  readonly unchanged: number;
  readonly faults: readonly RowFault[];
  /** Whether it was done, or only said. */
  readonly loaded: boolean;
}

/** The catalogue is an administrator's to load, or a program's whose key may write. */
function requireLoader(principal: Principal): void {
  if (principal.kind === 'program') requireDesk(principal, 'write');
  else requireAdministrator(principal);
}

const BLANK = {
  fits: '',
  mount: '',
  tip: '',
  rings: '',
  nominal_ratio: null,
  hole_in: null,
  width_across_trunnion_in: null,
  roller_diameter_in: null,
  body_width_in: null,
  pivot_to_tip_in: null,
  pivot_to_cup_in: null,
  weight: 1,
  notes: '',
};
type Values = typeof BLANK & { name: string };
type Key = keyof Values;

const textOf = (value: unknown, otherwise: string) => (typeof value === 'string' ? value : otherwise);

/** What the row says, over what is on record there: a column that the file does not have is left as it is. */
function valuesOf(row: FileRow, standing: FamilyRow | undefined) {
  const before = standing ?? { ...BLANK, name: '' };
  const given = row.values;
  const size = (key: 'nominal_ratio' | Extract<Key, `${string}_in`>) => {
    const value = given[key];
    return value === undefined ? before[key] : typeof value === 'number' ? value : null;
  };
  return {
    name: textOf(given.name, before.name),
    fits: textOf(given.fits, before.fits),
    mount: textOf(given.mount, before.mount),
    tip: textOf(given.tip, before.tip),
    rings: textOf(given.rings, before.rings),
    nominal_ratio: size('nominal_ratio'),
    hole_in: size('hole_in'),
    width_across_trunnion_in: size('width_across_trunnion_in'),
    roller_diameter_in: size('roller_diameter_in'),
    body_width_in: size('body_width_in'),
    pivot_to_tip_in: size('pivot_to_tip_in'),
    pivot_to_cup_in: size('pivot_to_cup_in'),
    weight: 'weight' in given ? (typeof given.weight === 'number' ? given.weight : 1) : before.weight,
    notes: textOf(given.notes, before.notes),
  };
}

type RowValues = ReturnType<typeof valuesOf>;

const isSame = (values: RowValues, standing: FamilyRow) =>
  Object.entries(values).every(([key, value]) => memberOf(standing, key) === value);

function asProblem(faults: readonly RowFault[]): InputFaults {
  return new InputFaults(
    faults.map((fault) => ({
      pointer: `/csv/${fault.row}${fault.field === '' ? '' : `/${fault.field.replaceAll('~', '~0').replaceAll('/', '~1')}`}`,
      code: fault.code,
      detail: `row ${fault.row}${fault.field === '' ? '' : `, ${fault.field}`} ${fault.detail}`,
      received: fault.typed,
    })),
  );
}

/**
 * Loads the catalogue from a file. A row whose code is known changes that family, a new code adds one, and the
 * same file twice adds nothing. One fault and nothing is loaded, unless the rows without a fault are asked for.
 */
export async function loadCatalogue(
  tx: Tx,
  principal: Principal,
  input: z.output<typeof importInput>,
  now: Date,
): Promise<Loaded> {
  requireLoader(principal);
  const file = readFile(input.csv);
  const refused = file.unreadable || (file.faults.length > 0 && !input.partial);
  if (refused && !input.dryRun) throw asProblem(file.faults);
  // Two files at the same moment would each see the other's codes as new.
  await sql`select pg_advisory_xact_lock(hashtextextended(${`catalogue ${principal.shopId}`}, 0))`.execute(
    tx,
  );
  const standing = new Map((await familyRows(tx, principal.shopId)).map((row) => [row.code, row]));
  const added: Insertable<PartFamilyTable>[] = [];
  const changed: { id: string; values: Updateable<PartFamilyTable> }[] = [];
  for (const row of file.rows) {
    const before = standing.get(row.code);
    const values = valuesOf(row, before);
    if (before === undefined)
      added.push({ shop_id: principal.shopId, code: row.code, ...values, ...author(principal) });
    else if (!isSame(values, before))
      changed.push({ id: before.id, values: { ...values, ...author(principal), changed_at: now } });
  }
  if (!input.dryRun) await write(tx, principal.shopId, added, changed);
  return {
    rows: file.count,
    added: added.length,
    changed: changed.length,
    unchanged: file.rows.length - added.length - changed.length,
    faults: file.faults,
    loaded: !input.dryRun,
  };
}

/** A statement takes at most 65 535 values. */
const ROWS_AT_ONCE = 500;

async function write(
  tx: Tx,
  shopId: string,
  added: readonly Insertable<PartFamilyTable>[],
  changed: readonly { id: string; values: Updateable<PartFamilyTable> }[],
): Promise<void> {
  for (let from = 0; from < added.length; from += ROWS_AT_ONCE)
    await tx
      .insertInto('part_family')
      .values(added.slice(from, from + ROWS_AT_ONCE))
      .execute();
  for (const { id, values } of changed)
    await tx
      .updateTable('part_family')
      .set(values)
      .where('shop_id', '=', shopId)
      .where('id', '=', id)
      .execute();
}
