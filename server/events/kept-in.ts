import type { Tx } from '../database/database.ts';

const lastOf = new WeakMap<Tx, number>();

/** Remembers the newest line that a transaction has written. */
export const noteKept = (tx: Tx, seq: number): void => {
  lastOf.set(tx, seq);
};

/** The newest line that a transaction has written: what a page shows first after its form was sent. */
export const keptIn = (tx: Tx): number | undefined => lastOf.get(tx);
