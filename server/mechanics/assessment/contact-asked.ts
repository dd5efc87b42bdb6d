import type { AssessedQuestion, StopReason } from './assessment.ts';
import { asked } from './common/asked.ts';
import { withoutStop } from './common/first-said.ts';
import { byId, lowerFirst } from './common/said.ts';
import type { Evidence } from './evidence.ts';
import { allPutRight, lastSaid } from './noise/answers.ts';
import { hasMovedSaid } from './noise/damage.ts';

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'since',
    label: 'What was found since',
    changes: 'The first question is put right in its own step.',
  },
  {
    code: 'first',
    label: 'The first answer',
    changes: 'What was told since is put right where it was told; a stop stays until the desk lifts it.',
  },
];

/** Metal alone says nothing of what hit, bent or came loose. */
const isContrary = ({ code, id }: StopReason): boolean =>
  code === 'held' ||
  code === 'part-damaged' ||
  (code === 'sign-of-damage' && id !== 'stop:sign-of-damage:metal');

/** What was found since that the first answer denies, by its id and as a clause. */
function contraryTo(
  evidence: Evidence,
  against: readonly StopReason[],
): { readonly id: string; readonly said: string }[] {
  // By id: what the question is known by stays the same when one of them is lifted.
  const stopped = against
    .toSorted(byId)
    .flatMap(({ id, why }) => (why === undefined ? [] : [{ id, said: lowerFirst(withoutStop(why)) }]));
  const moved = lastSaid('noise-nut', evidence)?.answer === 'moved';
  return [...stopped, ...(moved ? [{ id: 'nut-moved', said: hasMovedSaid(evidence) }] : [])];
}

/**
 * The first question of the call answered with no, beside something found that says otherwise: one of the two is put
 * right by a person.
 */
export function contactQuestions(evidence: Evidence, stop: readonly StopReason[]): AssessedQuestion[] {
  if (evidence.call.contact !== 'none') return [];
  // A stop outlives the answer that raised it; what was put right since denies nothing.
  const against = stop.filter((each) => isContrary(each) && !allPutRight(each.restsOn, evidence));
  const contrary = contraryTo(evidence, against);
  const [first] = contrary;
  if (first === undefined) return [];
  return [
    asked(
      {
        code: 'contact-told-otherwise',
        weight: 'weak',
        ask: `Nothing hit, bent, tight or loose, it was said; yet ${first.said}. Which of the two is so?`,
        knownBy: `contact ${contrary.map(({ id }) => id).join(' ')}`,
        test: 'Ask again what happened, and put the one that is wrong right in its own step.',
        testAtBench: 'Look again, and put the one that is wrong right in its own step.',
        byLooking: true,
        restsOn: against.flatMap(({ restsOn }) => restsOn),
      },
      { about: { of: 'build' }, step: 'triage', answers: evidence.answers, choices: CHOICES },
    ),
  ];
}
