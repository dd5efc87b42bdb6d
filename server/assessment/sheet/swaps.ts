import { UNITS } from '../../../shared/quantities/units.ts';
import { type ArmOnValve, type SwapOutcome, swapTests } from '../../mechanics/valve-sheet/swap-test.ts';
import type { OddValve, SideJudged } from '../../mechanics/valve-sheet/types.ts';
import type { SheetReading } from '../../records/sheet/sheet-table.ts';
import { cellFor, type Side, type ValveRow } from './valve-rows.ts';

export interface Swap extends SwapOutcome {
  readonly side: Side;
  readonly spring: SheetReading['spring'];
  readonly words: string;
}

const WORDS: Readonly<Record<SwapOutcome['verdict'], (arms: string, places: string) => string>> = {
  part: (arms) => `The difference went with the arm: it is the part (${arms}). Only now look at its lot.`,
  position: (_, places) =>
    `The difference stayed on the valve: it is the position or how it is measured (${places}). Swap the pushrods, then look at tip and stud height.`,
  both: (arms, places) => `Both the arm and the position differ (${arms}; ${places}).`,
  gone: () => 'The difference is gone after refitting: read both again before anything is blamed.',
};

/** Lifts brought to the side's median lobe lift, so that a low lobe is not taken for a low arm. */
function onOneLobe(
  reading: SheetReading,
  row: ValveRow | undefined,
  medianLobe: number | undefined,
): number | undefined {
  const { value, unit } = reading.reading;
  if (value === undefined) return undefined;
  const lift = value * UNITS[unit].toSi;
  const lobe = row === undefined ? undefined : cellFor(row, 'lobe-lift')?.value;
  return lobe === undefined || medianLobe === undefined ? lift : (lift * medianLobe) / lobe;
}

function readingsOf(
  side: Side,
  spring: SheetReading['spring'],
  standing: readonly SheetReading[],
  rows: readonly ValveRow[],
  medianLobe: number | undefined,
): ArmOnValve[] {
  return standing.flatMap((each) => {
    if (each.kind !== 'valve-lift' || each.valve !== side || each.spring !== spring) return [];
    if (each.armId === undefined || each.arms !== 'these') return [];
    const row = rows.find((one) => one.cylinder === each.cylinder && one.valve === side);
    const lift = onOneLobe(each, row, medianLobe);
    return lift === undefined ? [] : [{ arm: each.armId, place: `${each.cylinder} ${side}`, lift }];
  });
}

/** What the swaps on record decide. */
export function swapsOf(
  judged: SideJudged,
  spring: SheetReading['spring'],
  standing: readonly SheetReading[],
  rows: readonly ValveRow[],
  names: ReadonlyMap<string, string>,
): Swap[] {
  const readings = readingsOf(judged.side, spring, standing, rows, judged.medians.lobeLift);
  return swapTests(readings).map((outcome) => {
    const arms = outcome.arms.map((id) => names.get(id) ?? 'an arm').join(' and ');
    return {
      ...outcome,
      side: judged.side,
      spring,
      words: WORDS[outcome.verdict](arms, outcome.places.join(' and ')),
    };
  });
}

/** The swap that would decide part against position for an odd valve; undefined where one has decided already. */
export function swapToDo(
  odd: OddValve,
  judged: SideJudged,
  rows: readonly ValveRow[],
  done: readonly Swap[],
  names: ReadonlyMap<string, string>,
): string | undefined {
  const place = `${odd.cylinder} ${odd.valve}`;
  if (odd.cause !== 'rocker-or-position' && odd.cause !== 'both') return undefined;
  if (done.some((swap) => swap.places.includes(place))) return undefined;
  const odds = new Set(judged.odd.map((each) => each.cylinder));
  const others = rows.filter(
    (row) => row.valve === odd.valve && !odds.has(row.cylinder) && cellFor(row, 'valve-lift') !== undefined,
  );
  const neighbour = others.sort(
    (a, b) => Math.abs(a.cylinder - odd.cylinder) - Math.abs(b.cylinder - odd.cylinder),
  )[0];
  if (neighbour === undefined) return undefined;
  const armOn = (row: ValveRow | undefined) => (row?.armId === undefined ? undefined : names.get(row.armId));
  const own = armOn(rows.find((row) => row.cylinder === odd.cylinder && row.valve === odd.valve));
  const other = armOn(neighbour);
  const there = `${neighbour.cylinder} ${neighbour.valve}`;
  if (own === undefined || other === undefined)
    return `Name the arms of ${place} and ${there} first, say which sits where and read both; then swap them.`;
  return `Swap ${own} (${place}) with ${other} (${there}), say where they sit now, and read both valves again the same way.`;
}
