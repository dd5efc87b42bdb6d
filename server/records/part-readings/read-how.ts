import type { Selectable } from 'kysely';
import { defined } from '../../../shared/defined.ts';
import { isUnit, type Quantity } from '../../../shared/quantities/units.ts';
import { type Entered, siIf, siOf } from '../../../shared/schemas/entered.ts';
import type { CorrectPartReading } from '../../../shared/schemas/part-reading.ts';
import type { PartTool } from '../../../shared/schemas/part-words.ts';
import type { PartReadingTable } from '../../database/tables/parts.ts';
import { howRead } from '../../mechanics/identify/how-read.ts';

type Row = Selectable<PartReadingTable>;
type WithinColumns = Pick<Row, 'within_typed' | 'within_value' | 'within_unit' | 'within_read_as'>;

/** The half-width as it was typed, as the columns of a row. */
export const withinColumns = (within: Entered | undefined): WithinColumns => ({
  within_typed: within?.typed ?? null,
  within_value: within?.value ?? null,
  within_unit: within?.unit ?? null,
  within_read_as: within?.readAs ?? null,
});

export function quantityOf(value: number | null, unit: string | null): Quantity | undefined {
  if (value === null || unit === null) return undefined;
  if (!isUnit(unit)) throw new Error(`a stored reading has the unknown unit ${unit}`);
  return { value, unit };
}

export function withinOf(row: WithinColumns): Entered | undefined {
  const quantity = quantityOf(row.within_value, row.within_unit);
  if (quantity === undefined) return undefined;
  return { ...quantity, typed: row.within_typed ?? '', readAs: row.within_read_as ?? '' };
}

/** Tool and half-width as they are read out; empty for what is only seen or written. */
export function howOf(
  kind: string,
  size: Quantity | undefined,
  { tool, within, count }: { tool: PartTool; within: Entered | undefined; count: number | undefined },
): string {
  if (size === undefined) return '';
  return howRead({ kind, size: siOf(size), tool, ...defined({ typedWithin: siIf(within), count }) });
}

/** Without another tool the old one and its half-width hold; another tool has its own, unless one is typed. */
export const correctedHow = (old: Row, { tool, within }: CorrectPartReading) =>
  tool === undefined && within === undefined ? {} : { tool: tool ?? old.tool, ...withinColumns(within) };
