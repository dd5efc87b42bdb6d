import { SIDES } from '../../../../shared/sides.ts';
import { share } from '../../kit/allowances.ts';
import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { inches } from '../common/said.ts';
import type { Evidence, Side } from '../evidence.ts';

/**
 * Valve and piston come closest some 10° from top dead centre, far from full lift: a lobe that stood this near to its whole
 * lift there was read somewhere else (trade press: the closest point is not at full lift; the share is common practice, no
 * published source).
 */
const NEAR_FULL = share('lobe-near-full');

/** A question of two halves has an answer for each. */
const CHOICES: readonly AnswerChoice[] = [
  {
    code: 'not-found',
    label: 'It stood there where they came closest',
    changes: 'What the ratio changes is worked out from that lift.',
  },
  {
    code: 'found',
    label: 'It is its lift at the top',
    changes:
      'The lift at the closest point is put right, or left out: the gap is then worked out without it.',
  },
];

/** Where the lobe’s lift at the closest point is near its whole lift, it is asked about: the change of the gap hangs on it. */
export function closestAsked({ card, taken, answers }: Evidence): AssessedQuestion[] {
  return SIDES.flatMap((side): AssessedQuestion[] => {
    const { lobeLift } = card[side];
    const there = taken[side].lobeLiftAtClosest;
    if (lobeLift === undefined || there === undefined || there < NEAR_FULL * lobeLift) return [];
    return [
      asked(
        {
          code: 'closest-near-full-lift',
          weight: 'weak',
          ask: `Did the ${side} lobe stand at ${inches(there)} where valve and piston came closest, or is that its lift at the top?`,
          knownBy: 'closest-near-full-lift',
          size: `Its whole lift is ${inches(lobeLift)}, so that would be ${Math.round((100 * there) / lobeLift)} % of it. They come closest some 10° from TDC, and never at full lift.`,
          test: 'Say at which crank angle it was read, and what the lifter had risen there.',
          byLooking: true,
          restsOn: [],
        },
        { about: { of: 'side', valve: side }, step: 'consequences', answers, choices: CHOICES },
      ),
    ];
  });
}

/** Nobody has said yet that it stood there: a lower ratio is not credited with all of it. */
export const isClosestDoubted = (evidence: Evidence, side: Side): boolean =>
  closestAsked(evidence).some(
    (question) =>
      question.about.of === 'side' && question.about.valve === side && chosenOf(question) !== 'not-found',
  );
