import { nearest } from './compare.ts';
import { fallingPasses } from './falling-passes.ts';
import { expectedLifts, idsOf, valveLift } from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { inch } from './words.ts';

/** How far short a hydraulic lifter that is not locked reads on the light spring; undefined where that is ordinary. */
function shortBy(input: QuestionInput, t: Tolerances): number | undefined {
  if (input.lifter !== 'hydraulic' || input.spring === 'running' || input.lash === 'set') return undefined;
  const lift = valveLift(input);
  const expected = lift === undefined ? undefined : nearest(lift, expectedLifts(input));
  if (lift === undefined || expected === undefined) return undefined;
  const short = expected - lift;
  return short >= t.sinkShort - 1e-9 && short <= t.flexMost ? short : undefined;
}

/** Row 7 where no pass is under the last: the plunger may have sunk before the first of them. */
export function lifterSunk(input: QuestionInput, tolerances: Tolerances): Question[] {
  const short = input.valvePasses.length === 0 ? undefined : shortBy(input, tolerances);
  const falls = fallingPasses(input, tolerances).some(({ weight }) => weight === 'strong');
  if (short === undefined || falls) return [];
  return [
    {
      code: 'lifter-sunk',
      weight: 'strong',
      ask: 'Could the lifter have sunk before the first pass? It is hydraulic, and not locked.',
      size: `The lift is ${inch(short)} short; what the plunger loses, times the ratio, is missing at the valve.`,
      test: 'Use a solid lifter, or one locked solid of the same seat height, and read again.',
      restsOn: idsOf(input.valvePasses),
    },
  ];
}
