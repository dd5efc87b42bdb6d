import table from '../../../seeds/allowances.json' with { type: 'json' };
import { UNITS } from '../../../shared/quantities/units.ts';

export type AllowanceName = keyof typeof table.allowances;

const UNITS_OF_TABLE = { in: UNITS.in.toSi, deg: UNITS.deg.toSi } as const;

/** How far off an input may be, half-width in SI, from the seed table with its source. */
export function allowance(name: AllowanceName): number {
  const { value, unit } = table.allowances[name];
  return value * (unit === 'deg' ? UNITS_OF_TABLE.deg : UNITS_OF_TABLE.in);
}

export const allowanceSource = (name: AllowanceName): string => table.allowances[name].source;

/** Half-width of a ratio that is only stated, as a share of it. */
export const STATED_RATIO = table.statedRatio;
