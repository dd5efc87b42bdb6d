import table from '../../../seeds/materials.json' with { type: 'json' };
import { IN } from '../kit/si.ts';

const MILLIONTH = 1e-6;

/** Expansion of each known material by its name [1/K]. */
const EXPANSIONS: ReadonlyMap<string, number> = new Map(
  Object.entries(table.materials).map(([name, { expansion }]) => [name, expansion * MILLIONTH]),
);

/** What people call them: `cast iron`, `aluminium`. */
const ALSO_CALLED: ReadonlyMap<string, string> = new Map(Object.entries(table.alsoCalled));

const { source, unit: _, ...heights } = table.ordinaryHeights;

/** Heights of a train that is like most [m], where none are known, with their source. */
export const ORDINARY_HEIGHTS = {
  heights: {
    block: heights.block * IN,
    head: heights.head * IN,
    seat: heights.seat * IN,
    valve: heights.valve * IN,
    pushrod: heights.pushrod * IN,
  },
  source,
} as const;

export const MATERIAL_NAMES: readonly string[] = [...EXPANSIONS.keys()];

/** `Gray iron` and `aluminum 356` are the same as the names of the table. */
function normalised(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, '-')
    .replace(/^gray-/, 'grey-')
    .replace(/^aluminum\b/, 'aluminium');
}

/** Mean linear expansion of a material of the table [1/K], or undefined where it is not there. */
export function expansionOf(name: string): number | undefined {
  if (name.length > 60) return undefined;
  const called = normalised(name);
  return EXPANSIONS.get(ALSO_CALLED.get(called) ?? called);
}
