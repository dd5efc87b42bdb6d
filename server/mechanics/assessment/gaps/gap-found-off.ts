import { defined } from '../../../../shared/defined.ts';
import { SHEET_KINDS } from '../../../../shared/schemas/sheet.ts';
import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { asked, type Doubt } from '../common/asked.ts';
import { gapSaid } from '../common/gap-said.ts';
import { toRead } from '../common/lack.ts';
import { placeOf, valveSubject } from '../common/said.ts';
import type { AnswerEvidence, GapName, SheetEvidence } from '../evidence.ts';

/** A reading of a gap, in one place or the least of a scan. */
export type GapReading = SheetEvidence & { readonly kind: GapName };

/** The question whether a gap that was read or what it is calculated from is off. */
export const AGAINST_CALCULATED = 'gap-against-calculated';

/** Of the two exactly one is off, or both were looked at and are right. */
const CHOICES: readonly AnswerChoice[] = [
  {
    code: 'found',
    label: 'The reading is off',
    changes:
      'It clears nothing: the gap is read again, or it is struck out with the reason. What is calculated from the same figures is in doubt no more.',
  },
  {
    code: 'not-found',
    label: 'The reading holds: the figures were gone over',
    changes:
      'The reading counts. Of the others what comes out of the same figures has no word until the one that is off is put right, or each is measured.',
  },
];

/** The figure alone: what else its interval holds may be answered later. */
export const figureOf = ({ reading: { value, low, high } }: GapReading): string =>
  gapSaid(value === undefined ? defined({ low, high }) : { value });

/** What is asked of one reading: an answer to it is none of a reading that comes later. */
export const againstCalculated = (
  entry: GapReading,
  doubt: Pick<Doubt, 'weight' | 'size' | 'test'>,
  answers: readonly AnswerEvidence[],
): AssessedQuestion =>
  asked(
    {
      ...doubt,
      code: AGAINST_CALCULATED,
      ask: `${SHEET_KINDS[entry.kind]} on ${placeOf(entry)} was read ${figureOf(entry)}. Is that reading off, or what the gap is calculated from?`,
      knownBy: AGAINST_CALCULATED,
      byLooking: true,
      restsOn: [entry.id],
    },
    { about: valveSubject(entry), step: 'consequences', among: entry.id, answers, choices: CHOICES },
  );

/** The answer to it that says so. */
export function foundOffBy(
  entry: GapReading,
  answers: readonly AnswerEvidence[],
): AssessedQuestion['answered'] {
  const { answered } = againstCalculated(entry, { weight: 'weak', test: '' }, answers);
  return answered?.found === true ? answered : undefined;
}

/** What such a gap waits for. */
export const READ_AGAIN = toRead('another-reading', 'another reading: this one was found off');
