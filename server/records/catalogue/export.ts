import { memberOf } from '../../../shared/member.ts';
import { type Principal, requireDesk } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { COLUMNS } from './columns.ts';
import { guarded, writeCsv } from './csv-text.ts';
import { type FamilyRow, familyRows } from './families.ts';

function cellOf(row: FamilyRow, column: (typeof COLUMNS)[number]): string {
  const value = memberOf(row, column.name);
  if (typeof value === 'number') return String(value);
  const text = typeof value === 'string' ? value : '';
  return column.holds === 'text' ? guarded(text) : text;
}

/** The catalogue as a file that, loaded again, changes nothing. Numbers stay numbers for a spreadsheet. */
export async function exportCatalogue(tx: Tx, principal: Principal): Promise<string> {
  requireDesk(principal, 'read');
  const rows = await familyRows(tx, principal.shopId);
  return writeCsv([
    COLUMNS.map((column) => column.name),
    ...rows.map((row) => COLUMNS.map((column) => cellOf(row, column))),
  ]);
}
