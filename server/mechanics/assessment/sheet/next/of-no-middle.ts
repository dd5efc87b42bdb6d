import { placeOf } from '../../common/said.ts';
import type { SheetRowDetail, SheetSideDetail } from '../detail.ts';
import { placesSaid } from '../rows-to-read.ts';
import type { Said } from './said.ts';

const TWICE = 2;

/** Valves that differ, with none left beside them to tell which is off: each of them is read a second time. */
export const ofNoMiddle = (sides: readonly SheetSideDetail[], rows: readonly SheetRowDetail[]): Said[] =>
  sides.flatMap(({ side, spring, noMiddle }) => {
    const once = (noMiddle?.places ?? []).filter((place) =>
      rows.some(
        (row) =>
          placeOf(row) === placeOf(place) &&
          row.cells.some(
            (cell) => cell.kind === 'valve-lift' && cell.spring === spring && cell.passes < TWICE,
          ),
      ),
    );
    return once.length === 0
      ? []
      : [
          {
            action: 'read-again',
            about: { of: 'side', valve: side === 'exhaust' ? side : 'intake' },
            sentence: `Read ${placesSaid(once)} once more, the same way. Nothing is moved for that.`,
            reason: 'They differ, and which of them is off can’t be told yet: a slip is ruled out first.',
          } as const,
        ];
  });
