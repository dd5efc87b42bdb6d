import type { ValvePlace } from '../evidence.ts';

/** The arm on the valve that a set-up speaks of, as ids have it. */
export const groupKey = ({ cylinder, valve, armId }: ValvePlace & { readonly armId?: string }): string =>
  [`${cylinder}-${valve}`, ...(armId === undefined ? [] : [armId])].join(':');
