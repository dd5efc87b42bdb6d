import { idsOf } from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';

/** The engine is down with solid lifters, and a reading says that a hydraulic one was under it. */
export function lifterOfEngine(input: QuestionInput, _tolerances: Tolerances): Question[] {
  if (input.engineLifter !== 'solid' || input.lifter !== 'hydraulic' || input.valvePasses.length === 0)
    return [];
  return [
    {
      code: 'lifter-of-engine',
      weight: 'weak',
      ask: 'Which lifter was under this reading? The engine is down with solid ones, the reading with a hydraulic.',
      size: 'A hydraulic one may have sunk; a solid one cannot.',
      test: 'Ask, or have a look taken at the lifter.',
      testAtBench: 'Look at the lifter, and say which it is.',
      restsOn: idsOf(input.valvePasses),
    },
  ];
}
