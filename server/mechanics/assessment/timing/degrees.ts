import { DEGREE } from '../../setting-order/timing.ts';

/** Something that was kept, with the line and the id of its entry. */
export type Lined<T> = T & { readonly line: number; readonly id: string };

/** `3.25`, `102.75` */
export const degrees = (radians: number): string =>
  String(Number(Math.abs(radians / DEGREE).toFixed(2))).replace(/^0\./, '.');
