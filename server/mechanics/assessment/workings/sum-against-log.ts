import type { AssessedQuestion, Subject } from '../assessment.ts';
import { done } from '../common/answers-of.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { BUILD, type KeptSet } from '../common/kept.ts';
import { inches, listed, placeOf, valveSubject } from '../common/said.ts';
import type { TurnsEvidence } from '../evidence/kept-sums.ts';
import type { AnswerEvidence, LashEvidence, ValvePlace } from '../evidence.ts';

/** A sum that goes from a gap at which the log has no valve, beside what the log has found. */
export interface SumAgainstLog {
  readonly question: AssessedQuestion;
  /** The gap of the sum was the right one, of the one valve that the log has. */
  readonly of?: ValvePlace;
  /** It is of a valve that is not in the log yet. */
  readonly other: boolean;
}

const OTHER: AssessedQuestion['answers'][number] = {
  code: 'other-valve',
  label: 'The turn is for another valve',
  changes: 'The gap of that valve goes into the log first, and the turn is told with its name.',
};

function choicesOf(from: number, found: readonly LashEvidence[]): AssessedQuestion['answers'] {
  const [only, ...more] = found;
  const log = {
    code: 'found',
    label:
      only !== undefined && more.length === 0
        ? `${inches(only.gap.value ?? 0)}, as the log has it`
        : 'One of these, as the log has it',
    changes: 'The turn is worked out again from the gap of the log.',
    leadsTo: done('work it out again from the gap that the log has, and keep that.'),
  };
  return more.length > 0
    ? [log, OTHER]
    : [
        log,
        {
          code: 'not-found',
          label: `${inches(from)}, as in the sum`,
          changes: 'The turn counts for that valve; its gap in the log is put right.',
        },
        OTHER,
      ];
}

/**
 * A turn from a gap that the log has nowhere: made on the valve that the log does have, it would leave another gap than is
 * wanted. Asked before it is told.
 *
 * @param found what each valve of the log was found at last, since it was set
 */
export function sumAgainstLog(
  { id, set }: KeptSet<TurnsEvidence>,
  from: number,
  found: readonly LashEvidence[],
  answers: readonly AnswerEvidence[],
): SumAgainstLog {
  const [only, ...more] = found;
  const one = more.length === 0 ? only : undefined;
  const about: Subject = one === undefined ? BUILD : valveSubject(one);
  const said = found.map((line) => `${placeOf(line)} at ${inches(line.gap.value ?? 0)}`);
  const raised = asked(
    {
      code: 'sum-against-log',
      weight: 'strong',
      ask:
        one === undefined
          ? `Which valve was found at ${inches(from)}?`
          : `Was ${placeOf(one)} found at ${inches(one.gap.value ?? 0)}, or at ${inches(from)}?`,
      knownBy: 'which gap the turn goes from',
      size: `The log has ${listed(said)}; the turn was worked out from ${inches(from)} to ${inches(set.lashWanted ?? 0)}.`,
      test: 'Ask which valve the turn is for, and which feeler went in there. The gap as it was found goes into the log.',
      byLooking: true,
      restsOn: found.map((line) => line.id),
    },
    {
      about,
      step: 'adjuster',
      among: [id, ...found.map((line) => line.id).toSorted()].join('-'),
      answers,
      choices: choicesOf(from, found),
    },
  );
  const chosen = chosenOf(raised);
  const other = chosen === OTHER.code;
  return {
    question: raised,
    other,
    ...(chosen === 'not-found' && one !== undefined
      ? { of: { cylinder: one.cylinder, valve: one.valve } }
      : {}),
  };
}
