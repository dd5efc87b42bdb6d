import type { Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import { putAside } from './found-twice.ts';
import { lashLogOf } from './lash-log-of.ts';
import { onceEach } from './once.ts';
import { placeOf } from './said.ts';

/** The log of one valve without what nobody could say of and was read once more since. */
export const countingLog = onceEach(
  placeOf,
  (evidence: Evidence, place: ValvePlace): readonly LashEvidence[] => {
    const aside = putAside(evidence, place);
    return lashLogOf(evidence, place).filter((line) => !aside.includes(line));
  },
);

/** The lash as it is: the newest line of the log that counts, found or set. */
export const newestLash = (evidence: Evidence, place: ValvePlace): LashEvidence | undefined =>
  countingLog(evidence, place).at(-1);
