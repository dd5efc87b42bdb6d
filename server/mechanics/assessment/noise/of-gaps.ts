import type { Effect } from '../../noise/effects.ts';
import type { Fact } from '../../noise/weigh.ts';
import { keyOf, placeOf, valveSubject } from '../common/said.ts';
import type { ValvePlace } from '../evidence.ts';
import type { SheetCellDetail, SheetDetail, SheetRowDetail } from '../sheet/rows/detail.ts';

export const TOUCHING: Effect = { for: ['touching'], against: [] };
export const APART: Effect = { for: [], against: ['touching'] };

const KINDS = ['coil-bind', 'piston-to-valve'] as const;

const gapsOf = ({ cells }: SheetRowDetail): SheetCellDetail[] =>
  cells.filter(({ kind, word }) => KINDS.some((each) => each === kind) && word !== undefined);

/** Both gaps of a valve were measured, and both have a word. */
export const gapsRead = ({ rows }: SheetDetail, place: ValvePlace): boolean =>
  rows.some(
    (row) =>
      placeOf(row) === placeOf(place) &&
      KINDS.every((kind) => gapsOf(row).some((cell) => cell.kind === kind)),
  );

/** One that is short lets coils or valve and piston touch; only both clear speak against it. */
export function gapFacts({ rows }: SheetDetail, fits: (place: ValvePlace) => boolean): Fact[] {
  return rows.filter(fits).flatMap((row): Fact[] => {
    const gaps = gapsOf(row);
    const short = gaps.filter(({ word }) => word === 'short');
    const clear = gaps.filter(({ word }) => word === 'clear');
    if (short.length === 0 && clear.length < KINDS.length) return [];
    const told = short.length > 0 ? short : clear;
    return [
      {
        ...(short.length > 0 ? TOUCHING : APART),
        key: `gaps:${keyOf(valveSubject(row))}`,
        restsOn: told.flatMap(({ entryIds }) => entryIds).toSorted(),
        text: `Sheet: ${told.map(({ title }) => title.toLowerCase()).join(' and ')} of ${placeOf(row)}, ${short.length > 0 ? 'under its limit' : 'each over its limit'}`,
      },
    ];
  });
}
