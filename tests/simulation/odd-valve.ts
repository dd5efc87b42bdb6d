import type { SheetOddDetail } from '../../server/mechanics/assessment/sheet/rows/detail.ts';
import type { Chance } from '../mechanics/explain-readings/random.ts';
import { MemoryBuild } from './memory-build.ts';
import { inch } from './states.ts';

/** Eight cylinders with lobes ground alike and arms of one ratio: an invented engine. Inches. */
const CYLINDERS = [1, 2, 3, 4, 5, 6, 7, 8];
const LOBES = { intake: 0.35, exhaust: 0.362 } as const;
const RATIO = 1.6;
/** Repeat of one reading, standard deviation: common practice, no published source. */
export const NOISE = 0.0012;

type Side = keyof typeof LOBES;
const SIDES: readonly Side[] = ['intake', 'exhaust'];

/** The arm, or the lobe, of one valve is off by so much of valve lift. */
export interface Odd {
  readonly what: 'arm' | 'lobe';
  readonly off: number;
}

interface Row {
  readonly cylinder: number;
  readonly valve: Side;
  readonly lobe: number;
  readonly lift: number;
}

export interface SheetRead {
  readonly rows: readonly Row[];
  /** The odd valve; left out where there is none. */
  readonly odd?: { readonly cylinder: number; readonly valve: Side };
  readonly named: readonly SheetOddDetail[];
  /** Rows that are asked about before they are set against their siblings. */
  readonly inDoubt: number;
}

const thousandths = (value: number): number => Math.round(value * 1000) / 1000;

/** One sheet of sixteen valves, read once and entered on the record, and which of them it names. */
export function readSheet(chance: Chance, odd?: Odd): SheetRead {
  const at = odd === undefined ? undefined : { cylinder: chance.pick(CYLINDERS), valve: chance.pick(SIDES) };
  const off = odd === undefined ? 0 : chance.sign() * odd.off;
  const rows = CYLINDERS.flatMap((cylinder) =>
    SIDES.map((valve): Row => {
      const here = cylinder === at?.cylinder && valve === at.valve ? off : 0;
      const lobe = LOBES[valve] + (odd?.what === 'lobe' ? here / RATIO : 0);
      const lift = LOBES[valve] * RATIO + here;
      return {
        cylinder,
        valve,
        lobe: thousandths(lobe + chance.normal(NOISE)),
        lift: thousandths(lift + chance.normal(NOISE)),
      };
    }),
  );
  const build = new MemoryBuild('one-valve-differs');
  const lobes = { intake: { lobeLift: inch(LOBES.intake) }, exhaust: { lobeLift: inch(LOBES.exhaust) } };
  build.spec({ engine: { cylinders: 8 }, cam: { assumedRatio: RATIO, ...lobes } });
  build.sheet({
    ...{ spring: 'light', lifter: 'solid', tool: 'indicator' },
    readings: rows.flatMap(({ cylinder, valve, lobe, lift }) => [
      { cylinder, valve, kind: 'lobe-lift', reading: inch(lobe) },
      { cylinder, valve, kind: 'valve-lift', reading: inch(lift) },
    ]),
  });
  const { sheet } = build.assess().details;
  return {
    rows,
    ...(at === undefined ? {} : { odd: at }),
    named: sheet.sides.flatMap((side) => side.odd),
    inDoubt: sheet.rows.filter((row) => row.inDoubt).length,
  };
}

export const isOdd = (
  { odd }: SheetRead,
  place: { readonly cylinder: number; readonly valve: string },
): boolean => odd?.cylinder === place.cylinder && odd.valve === place.valve;
