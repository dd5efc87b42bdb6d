import { isAtLeast } from '../../kit/within.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { keyOfFigures } from '../common/key-of-figures.ts';
import type { Evidence, StopEvidence } from '../evidence.ts';
import type { HeldPeak } from './against-card.ts';
import { wheelSaid } from './pointer-said.ts';
import { type Lined, READ, withoutError } from './readings.ts';

/** A peak that another error was taken off than any stop on record has. */
export interface AgainstStop {
  readonly question: AssessedQuestion;
  /** With the error that was said to hold taken off; as it was told while nobody says. */
  readonly peak: HeldPeak;
}

function askedOf(
  { id, side, pointerOff = 0 }: HeldPeak,
  { correction }: StopEvidence,
  { answers }: Evidence,
): AssessedQuestion {
  const stop = wheelSaid(correction);
  const reading = wheelSaid(pointerOff);
  return asked(
    {
      code: 'pointer-differs',
      weight: 'strong',
      ask: `When the ${side} was read, did the wheel read ${stop}, or ${reading}?`,
      knownBy: 'pointer-differs',
      size: `By the stop the wheel reads ${stop}; ${reading} was taken off what was read.`,
      test: 'look at both readings of the stop as they were written down.',
      byLooking: true,
      restsOn: [],
    },
    {
      about: { of: 'side', valve: side },
      step: 'timing',
      among: `${id}:${keyOfFigures('pointer', correction, pointerOff)}`,
      answers,
      choices: [
        { code: 'stop', label: `${stop}, as the stop has it`, changes: 'That is taken off instead.' },
        { code: 'reading', label: `${reading}, as it was told`, changes: 'The lobe counts as it was told.' },
      ],
    },
  );
}

/** What the stops on record make of the error that was taken off; nothing where one of them has it, or there is none. */
export function againstStop(
  peak: HeldPeak,
  stops: readonly Lined<StopEvidence>[],
  evidence: Evidence,
): AgainstStop | undefined {
  const { pointerOff } = peak;
  const newest = stops.at(-1);
  if (pointerOff === undefined || newest === undefined) return undefined;
  if (stops.some(({ correction }) => !isAtLeast(Math.abs(correction - pointerOff), READ))) return undefined;
  const question = askedOf(peak, newest, evidence);
  return {
    question,
    peak:
      chosenOf(question) === 'stop'
        ? withoutError(peak, { ...newest, correction: newest.correction - pointerOff })
        : peak,
  };
}
