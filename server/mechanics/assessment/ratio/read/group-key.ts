import type { ValvePlace } from '../../evidence.ts';

/** The arm on the valve that a set-up speaks of, as ids have it; of a set that is off since with what it was sold as. */
export const groupKey = ({
  cylinder,
  valve,
  armId,
  soldAsThen,
}: ValvePlace & { readonly armId?: string; readonly soldAsThen?: number }): string =>
  [
    `${cylinder}-${valve}`,
    ...(armId === undefined ? [] : [armId]),
    ...(soldAsThen === undefined ? [] : [`sold-as-${soldAsThen}`]),
  ].join(':');
