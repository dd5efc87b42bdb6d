import type { Entry } from './store.ts';

/** Where a person says stop, from any page of the link. */
const STOP = '/bench/hold';

export const isStop = ({ action }: Pick<Entry, 'action'>): boolean => action === STOP;

/**
 * The order in which entries go out: a stop before everything that waits, since somebody may turn it meanwhile; the
 * rest as it was entered.
 */
export const lineUp = (entries: readonly Entry[]): Entry[] => [
  ...entries.filter(isStop),
  ...entries.filter((entry) => !isStop(entry)),
];
