import { type Goal, planOf } from '../../../shared/schemas/goals.ts';
import type { Headline } from './assessment.ts';

/** What the call is about is told first; the rest follows in the order of the parts. */
export function inOrderOf(goal: Goal, headlines: readonly Headline[]): Headline[] {
  // The last step of a plan is the one that gives the answer; those before it are asked for it.
  const about = planOf(goal).asks.toReversed();
  const rank = ({ step }: Headline): number => (about.includes(step) ? about.indexOf(step) : about.length);
  return headlines.toSorted((a, b) => rank(a) - rank(b));
}
