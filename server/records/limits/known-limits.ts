import table from '../../../seeds/limits.json' with { type: 'json' };
import type { Entered } from '../../../shared/schemas/entered.ts';
import { isLimitName, type LimitName } from '../../mechanics/kit/limits.ts';

/** A limit as it is shown and used: the shop's own figure where it has one, else the default. */
export interface Limit {
  readonly name: LimitName;
  readonly title: string;
  readonly value: Pick<Entered, 'value' | 'unit' | 'readAs'>;
  readonly source: string;
  /** 0 for the default. */
  readonly revision: number;
  readonly by: string | undefined;
  readonly at: Date | undefined;
}

export const LIMIT_NAMES: readonly LimitName[] = Object.keys(table.limits).filter(isLimitName);

export const titleOf = (name: LimitName): string => table.limits[name].title;

export function defaultOf(name: LimitName): Limit {
  const { title, value, source } = table.limits[name];
  const written = value.toFixed(3).replace(/^0/, '');
  return {
    name,
    title,
    value: { value, unit: 'in', readAs: `${written} in` },
    source,
    revision: 0,
    by: undefined,
    at: undefined,
  };
}
