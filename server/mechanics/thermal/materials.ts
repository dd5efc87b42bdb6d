import table from '../../../seeds/materials.json' with { type: 'json' };

const MILLIONTH = 1e-6;

/** Expansion of each known material by its name [1/K]. */
const EXPANSIONS: ReadonlyMap<string, number> = new Map(
  Object.entries(table.materials).map(([name, { expansion }]) => [name, expansion * MILLIONTH]),
);

export const MATERIAL_NAMES: readonly string[] = [...EXPANSIONS.keys()];

/** `Gray iron` and `aluminum 356` are the same as the names of the table. */
function normalised(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, '-')
    .replace(/^gray-/, 'grey-')
    .replace(/^aluminum-/, 'aluminium-');
}

/** Mean linear expansion of a material of the table [1/K], or undefined where it is not there. */
export function expansionOf(name: string): number | undefined {
  return name.length > 60 ? undefined : EXPANSIONS.get(normalised(name));
}
