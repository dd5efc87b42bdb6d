import { IN } from '../../../kit/si.ts';
import type { SheetEvidence } from '../../evidence.ts';
import type { Column } from './columns.ts';

const EQUAL = 1e-9 * IN;

export const liftOf = ({ reading }: SheetEvidence): number => reading.value ?? 0;

/** How many of the readings say what another of the same valve says. */
export function repeats(rows: Column['rows']): { readonly pairs: number; readonly alike: number } {
  const distinct = (row: readonly SheetEvidence[]) =>
    row.filter((one, at) => !row.slice(0, at).some((two) => Math.abs(liftOf(one) - liftOf(two)) <= EQUAL))
      .length;
  return {
    pairs: rows.reduce((sum, row) => sum + row.length - 1, 0),
    alike: rows.reduce((sum, row) => sum + row.length - distinct(row), 0),
  };
}

/** The most valves that stand at one number. */
export function mostAtOne(rows: Column['rows']): number {
  const counts = rows.map(
    ([one]) =>
      rows.filter((other) =>
        other.every((each) => one !== undefined && Math.abs(liftOf(each) - liftOf(one)) <= EQUAL),
      ).length,
  );
  return Math.max(0, ...counts);
}
