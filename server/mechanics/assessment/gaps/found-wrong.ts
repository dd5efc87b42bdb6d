import type { AssessedQuestion } from '../assessment.ts';
import type { Evidence } from '../evidence.ts';
import { foundOffBy, type GapReading } from './gap-found-off.ts';
import { slipOfGap } from './gap-slip.ts';
import { misreadBy } from './read-apart.ts';

/** The answer by which a reading of a gap is off, whichever question it was given to: nobody is asked so twice. */
export function foundWrongBy(entry: GapReading, evidence: Evidence): AssessedQuestion['answered'] {
  if (evidence.answers.length === 0) return undefined;
  const slip = slipOfGap(evidence, entry)?.answered;
  return (
    foundOffBy(entry, evidence.answers) ??
    (slip?.found === true ? slip : undefined) ??
    misreadBy(entry, evidence)
  );
}

/** Somebody looked and said that this reading is off: it stands on record, and clears nothing any more. */
export const isFoundWrong = (entry: GapReading, evidence: Evidence): boolean =>
  foundWrongBy(entry, evidence) !== undefined;
