import demo from '../../../seeds/demo-catalogue.json' with { type: 'json' };
import { PART_SIZES } from '../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { SizeKind } from '../../mechanics/identify/kinds.ts';
import { COLUMNS, SIZE_COLUMNS } from './columns.ts';
import { guarded, writeCsv } from './csv-text.ts';
import { loadCatalogue } from './import.ts';

type Cells = Readonly<Record<string, string | number | undefined>>;

function cellsOf(family: (typeof demo.families)[number]): Cells {
  const sizes: Readonly<Partial<Record<SizeKind, number>>> = family.sizes;
  return {
    code: family.code,
    name: family.name,
    fits: family.fits,
    mount: family.mount,
    tip: family.tip,
    rings: family.rings,
    nominal_ratio: family.ratio,
    weight: family.weight,
    notes: `Invented for the demo. ${'notes' in family ? family.notes : ''}`.trim(),
    ...Object.fromEntries(keysOf(PART_SIZES).map((kind) => [SIZE_COLUMNS[kind], sizes[kind]])),
  };
}

/** The invented catalogue as a file, the way a shop would bring its own. */
export function demoCatalogueFile(): string {
  const rows = demo.families.map(cellsOf);
  return writeCsv([
    COLUMNS.map(({ name }) => name),
    ...rows.map((cells) => COLUMNS.map(({ name }) => guarded(String(cells[name] ?? '')))),
  ]);
}

/** Loads the invented families into the demo shop. */
export async function seedCatalogue(tx: Tx, administrator: Principal, now: Date): Promise<void> {
  await loadCatalogue(tx, administrator, { csv: demoCatalogueFile(), dryRun: false, partial: false }, now);
}
