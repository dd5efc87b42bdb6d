import type { AssessedQuestion } from '../assessment.ts';
import { chosenOf } from '../common/chosen.ts';
import { placeOf } from '../common/said.ts';
import { wasThere } from '../common/since.ts';
import type { Evidence, SheetEvidence, ValvePlace } from '../evidence.ts';

/**
 * Whether the lifts of all these valves were read again after an answer that took them away, and what was there was struck
 * out: then the answer is done with, and says nothing of what was read since.
 */
export function wereReadSince(
  { sheet, answers }: Evidence,
  places: readonly ValvePlace[],
  spring: string,
  answerId: string,
): boolean {
  const answer = answers.find(({ id }) => id === answerId);
  if (answer === undefined || places.length === 0) return false;
  const lifts = sheet.filter((entry) => entry.kind === 'valve-lift' && entry.spring === spring);
  return places.every((place) => {
    const own = lifts.filter((entry) => placeOf(entry) === placeOf(place));
    const standing = own.filter((entry) => entry.standing);
    const isBefore = (entry: SheetEvidence): boolean => wasThere(entry, answer);
    return (
      standing.length > 0 &&
      !standing.some(isBefore) &&
      own.some((entry) => !entry.standing && isBefore(entry))
    );
  });
}

/** How a question that is open again is told apart from one that nobody looked into. */
const READ_SINCE = 'They were read again since it was answered, and are off as before.';

/** Answered so that all of them are read again, and they were: it is open again. */
export function openOnceRead(
  evidence: Evidence,
  question: AssessedQuestion,
  spring: string,
  toRead: (chosen: string) => readonly ValvePlace[],
): AssessedQuestion {
  const { answered, ...open } = question;
  if (answered === undefined) return question;
  const places = toRead(chosenOf(question) ?? '');
  if (!wereReadSince(evidence, places, spring, answered.entryId)) return question;
  return { ...open, size: [open.size ?? '', READ_SINCE].filter((each) => each !== '').join(' ') };
}
