import type { AssessedQuestion } from '../assessment.ts';
import { byId } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { judgeGap } from './gap.ts';
import { isOfGap, slipOfGap } from './gap-slip.ts';
import { againWanted } from './gap-stops.ts';
import { readApart } from './read-apart.ts';

/** What the readings of gaps are asked of themselves, whichever arms they were read with. */
export function doubtsOfReadings(evidence: Evidence): AssessedQuestion[] {
  const gaps = evidence.sheet
    .filter(({ standing }) => standing)
    .filter(isOfGap)
    .toSorted(byId);
  return [
    ...gaps.flatMap((entry) => slipOfGap(evidence, entry) ?? []),
    // One that was short and is to be read once more is asked about once it was.
    ...readApart(evidence)
      .filter(({ least }) => againWanted(judgeGap(least, evidence), evidence) === undefined)
      .map(({ question }) => question),
  ];
}
