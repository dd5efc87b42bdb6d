import { inSpoken } from '../../../../shared/quantities/authored.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { inches, valveSubject } from '../common/said.ts';
import type { Evidence, TipMarkEvidence } from '../evidence.ts';
import { mountingOf } from './context-of.ts';

const apart = (): string => inSpoken('A gauge and the ends read about .017 in apart.');

const CHOICES: AssessedQuestion['answers'] = [
  { code: 'ends', label: 'Over its ends', changes: 'The length counts as the overall one.' },
  { code: 'gauge', label: 'By a gauge', changes: 'The length counts as a gauge reads it.' },
];

/** One of its lengths of which nobody said over what it was taken, with what was answered. */
interface OverAsked {
  readonly mark: TipMarkEvidence;
  readonly question: AssessedQuestion;
  readonly chosen?: 'ends' | 'gauge';
}

function overAsked(mark: TipMarkEvidence, { answers }: Evidence): OverAsked {
  const question = asked(
    {
      code: 'length-over-what',
      weight: 'strong',
      ask: `Was the pushrod length of ${inches(mark.pushrod ?? 0)} taken over its ends, or by a gauge?`,
      knownBy: 'pushrod length over ends or by gauge',
      size: apart(),
      test: 'ask whoever measured it over what it was taken.',
      byLooking: true,
      restsOn: [mark.id],
    },
    { about: valveSubject(mark), step: 'geometry', among: mark.id, answers, choices: CHOICES },
  );
  const chosen = chosenOf(question);
  return chosen === 'ends' || chosen === 'gauge' ? { mark, question, chosen } : { mark, question };
}

/** Lengths of which nobody said over what they were taken, among others of which somebody did: on studs, where they set it. */
export function overQuestions(marks: readonly TipMarkEvidence[], evidence: Evidence): OverAsked[] {
  const withLength = marks.filter(({ pushrod }) => pushrod !== undefined);
  const unsaid = withLength.filter(({ pushrodOver }) => pushrodOver === undefined);
  const onStud = mountingOf(evidence) === 'stud';
  return !onStud || unsaid.length === withLength.length
    ? []
    : unsaid.map((mark) => overAsked(mark, evidence));
}
