import table from '../../../seeds/limits.json' with { type: 'json' };
import { IN } from './si.ts';

export type LimitName = keyof typeof table.limits;

export const isLimitName = (name: string): name is LimitName => Object.hasOwn(table.limits, name);

/** The default of a limit in SI, from the seed table with its source. */
export function defaultLimit(name: LimitName): number {
  return table.limits[name].value * IN;
}

export function limitSource(name: LimitName): string {
  return table.limits[name].source;
}
