import type { Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import { placeOf } from './said.ts';

/** The log of one valve, oldest first: by the days its lines are of, then as they were entered. */
export const lashLogOf = ({ lash }: Evidence, place: ValvePlace): LashEvidence[] =>
  lash
    .filter((line) => line.standing && placeOf(line) === placeOf(place))
    .toSorted((a, b) => (a.day === b.day ? a.line - b.line : a.day < b.day ? -1 : 1));

/** The lash as it is: the newest line of the log, found or set. */
export const newestLash = (evidence: Evidence, place: ValvePlace): LashEvidence | undefined =>
  lashLogOf(evidence, place).at(-1);
