import type { Tx } from '../database/database.ts';

/** What a command is known by beside what it keeps. */
interface TxNotes {
  /** When it was typed, by the clock of the device it was typed on. */
  readonly typedAt?: Date;
  /** What was sent says that it was read before a stop. */
  readonly saidBefore?: boolean;
  /** A stop stood, and it was kept by those words. */
  readonly beforeStop?: boolean;
  /** The newest line that it has written: what a page shows first after its form was sent. */
  readonly kept?: number;
}

const notes = new WeakMap<Tx, TxNotes>();

/** What was noted of a transaction. */
export const noted = (tx: Tx): TxNotes => notes.get(tx) ?? {};

/** Notes it beside what is noted already. */
export const note = (tx: Tx, more: TxNotes): void => {
  notes.set(tx, { ...noted(tx), ...more });
};

/** Notes it where what was sent says that it was read before the stop. */
export function noteBeforeStop(tx: Tx, sent: unknown): void {
  if (typeof sent === 'object' && sent !== null && 'beforeStop' in sent && sent.beforeStop === true)
    note(tx, { saidBefore: true });
}
