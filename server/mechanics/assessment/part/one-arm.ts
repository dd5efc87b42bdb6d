import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { listed, subjectSaid } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { choice } from './doubts.ts';
import { partsInHand } from './in-hand.ts';

/** Two parts in the hand that are said to be the same arm of the build: they are one, or one of them is another arm. */
export function twoOfOneArm(evidence: Evidence): AssessedQuestion[] {
  const parts = partsInHand(evidence);
  return evidence.arms.flatMap((arm) => {
    const own = parts.filter(({ armId }) => armId === arm.id);
    if (own.length < 2) return [];
    return [
      asked(
        {
          code: 'two-parts-one-arm',
          weight: 'weak',
          ask: `${listed(own.map(({ about }) => subjectSaid(about)))} are all said to be the arm “${arm.name}”. Which of them is?`,
          knownBy: 'which part is the arm',
          test: 'look at the marks of each, and say of the others which arm they are',
          byLooking: true,
          restsOn: [],
        },
        {
          about: { of: 'arm', armId: arm.id, name: arm.name },
          step: 'identify',
          among: own.map(({ key }) => key).join('+'),
          answers: evidence.answers,
          choices: [
            choice('one-part', 'They are one part, entered twice', 'What was read counts for that one arm.'),
            choice(
              'other-arms',
              'They are different arms',
              'Each is said to be its own arm, where the part is named.',
            ),
          ],
        },
      ),
    ];
  });
}
