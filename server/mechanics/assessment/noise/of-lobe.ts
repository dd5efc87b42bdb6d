import { sideOfValve } from '../../../../shared/schemas/words.ts';
import type { Effect } from '../../noise/effects.ts';
import type { Fact } from '../../noise/weigh.ts';
import { keyOf, placeOf, valveSubject } from '../common/said.ts';
import type { ValvePlace } from '../evidence.ts';
import type { SheetDetail } from '../sheet/rows/detail.ts';

export const LOBE_DOWN: Effect = { for: ['lobe', 'lifter'], against: [] };
export const LOBE_LEVEL: Effect = { for: [], against: ['lobe'] };

export const same = (a: ValvePlace, b: ValvePlace): boolean => placeOf(a) === placeOf(b);

/** Lobe lift against its siblings: down on them, level with at least two of them, or not told. */
export function lobeOf({ rows, sides }: SheetDetail, place: ValvePlace): 'down' | 'level' | undefined {
  const down = sides.some(
    ({ lobesDown, odd }) =>
      lobesDown.some((lobe) => same(lobe, place)) ||
      odd.some(
        ({ lobeOff = 0, cause, ...valve }) =>
          same(valve, place) && lobeOff < 0 && (cause === 'lobe' || cause === 'both'),
      ),
  );
  if (down) return 'down';
  // While nobody can tell which of them are down none is level.
  if (sides.some(({ lobesApart }) => lobesApart?.places.some((lobe) => same(lobe, place)))) return undefined;
  const read = rows.filter(
    ({ valve, inDoubt, cells }) =>
      sideOfValve(valve) === sideOfValve(place.valve) &&
      !inDoubt &&
      cells.some(({ kind, value }) => kind === 'lobe-lift' && value !== undefined),
  );
  return read.length >= 3 && read.some((row) => same(row, place)) ? 'level' : undefined;
}

/** A lobe that is level is told of the valve that it is about, one that is down of any. */
export function lobeFact(sheet: SheetDetail, place: ValvePlace, told: boolean): Fact[] {
  const lobe = lobeOf(sheet, place);
  if (lobe === undefined || (lobe === 'level' && !told)) return [];
  const side = sheet.rows.filter(({ valve }) => sideOfValve(valve) === sideOfValve(place.valve));
  const restsOn = side
    .flatMap(({ cells }) =>
      cells.filter(({ kind }) => kind === 'lobe-lift').flatMap(({ entryIds }) => entryIds),
    )
    .sort();
  const said = lobe === 'down' ? 'lifts less than the others' : 'lifts as much as the others';
  return [
    {
      ...(lobe === 'down' ? LOBE_DOWN : LOBE_LEVEL),
      key: `lobe:${keyOf(valveSubject(place))}`,
      restsOn,
      text: `Sheet: the lobe of ${placeOf(place)} ${said}`,
    },
  ];
}
