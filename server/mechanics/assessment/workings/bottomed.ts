import { defined } from '../../../../shared/defined.ts';
import { EQUAL } from '../../kit/nearest.ts';
import type { AssessedQuestion, StopReason } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { inches } from '../common/said.ts';
import type { AnswerEvidence } from '../evidence.ts';
import type { PreloadEvidence } from './evidence.ts';
import { BUILD, type KeptSet } from './kept.ts';
import { offSeat, pastBottom } from './said.ts';

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'found',
    label: 'Yes, it was turned that far',
    changes: 'The adjuster is backed off, and the turns are kept again, before the engine is turned.',
  },
  {
    code: 'not-found',
    label: 'No, that was only worked out',
    changes: 'The desk may lift the stop: no adjuster stands so.',
  },
];

function sentenceOf(set: PreloadEvidence, past: number): string {
  if (set.solid)
    return `Do not turn it: the build has solid lifters, and the turns kept hold the valve open by up to ${inches(offSeat(set, past))}.`;
  return past > EQUAL
    ? `Do not turn it: the turns kept go ${inches(past)} past the plunger’s bottom, and hold the valve open by up to ${inches(offSeat(set, past))}.`
    : 'Do not turn it: the turns kept put the plunger on its bottom, with nothing left for wear or heat.';
}

interface Bottomed {
  readonly questions: readonly AssessedQuestion[];
  readonly stop: readonly StopReason[];
}

/**
 * A plunger on its bottom is no cushion any more, and one past it holds the valve open: nobody turns that engine. The sum
 * that was kept last counts; it goes once the turns are kept again with travel left.
 */
export function bottomed(
  kept: KeptSet<PreloadEvidence> | undefined,
  answers: readonly AnswerEvidence[],
): Bottomed {
  const past = kept === undefined ? undefined : pastBottom(kept.set);
  if (kept === undefined || past === undefined) return { questions: [], stop: [] };
  const question = asked(
    {
      code: 'plunger-bottomed',
      weight: 'strong',
      ask: 'Was the adjuster really turned that far, or was it only worked out?',
      size: kept.set.solid
        ? 'The build says solid lifters: if they are hydraulic, put that right in its description.'
        : `The plunger goes ${inches(kept.set.travel ?? 0)}, and these turns press it ${inches(kept.set.preload)}.`,
      test: 'back the adjuster off with the engine left still, and say which it was.',
      byLooking: true,
      restsOn: [],
    },
    { about: BUILD, step: 'adjuster', ...defined({ among: kept.id }), answers, choices: CHOICES },
  );
  const answered = question.answered !== undefined;
  const first = answered
    ? 'What was found is answered.'
    : 'With nothing turned but the adjuster, back it off, and answer whether it had been turned so far.';
  return {
    questions: [question],
    stop: [
      {
        id: 'stop:plunger-bottomed',
        code: 'plunger-bottomed',
        about: BUILD,
        sentence: sentenceOf(kept.set, past),
        wayOut: `${first} The desk then lifts the stop, or keeps the turns again, with the reason.`,
        wayOutAtBench: `${first} Leave it until the desk has lifted the stop.`,
        answered,
        from: 'readings',
        ...defined({ entryId: kept.id }),
        line: kept.line,
        restsOn: [],
      },
    ],
  };
}
