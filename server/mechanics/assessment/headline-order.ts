import { GOAL_PLANS } from '../../../shared/goals.ts';
import type { Headline, StepName } from './assessment.ts';
import type { GoalName } from './words.ts';

/** What the call is about is told first; the rest follows in the order of the parts. */
export function inOrderOf(goal: GoalName, headlines: readonly Headline[]): Headline[] {
  const about: readonly StepName[] = GOAL_PLANS[goal].about;
  const rank = ({ step }: Headline): number => (about.includes(step) ? about.indexOf(step) : about.length);
  return headlines.toSorted((a, b) => rank(a) - rank(b));
}
