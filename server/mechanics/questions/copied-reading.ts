import { idsOf, valveLift } from './lifts.ts';
import { manyAlike, peaksAlike } from './many-alike.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { countText, inch } from './words.ts';

/** Row 16: one number on many valves. */
export function copiedReading(input: QuestionInput, tolerances: Tolerances): Question[] {
  const lift = valveLift(input);
  if (lift === undefined || !manyAlike(input, tolerances, tolerances.copiedPeak)) return [];
  const alike = peaksAlike(input, tolerances.copiedPeak);
  const all = alike === (input.otherPeaks ?? []).length;
  return [
    {
      code: 'copied-reading',
      weight: all && alike >= tolerances.peaksForCopy ? 'strong' : 'weak',
      ask: 'Was each valve read, or was one number carried over?',
      size: `${inch(lift)} stands for ${countText(alike)} other readings as well.`,
      test: 'Touch one of those valves while its lobe lifts it, and read it again.',
      restsOn: idsOf(input.valvePasses),
    },
  ];
}
