import { isWithin } from '../../kit/within.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import type { Evidence } from '../evidence.ts';
import type { HeldPeak } from './against-card.ts';
import { APART, degrees } from './readings.ts';

/** An event that is told from the wrong side, or at another lift, makes another duration. */
export function durationOff(
  { id, side, durationOver = 0 }: HeldPeak,
  { answers }: Evidence,
): AssessedQuestion[] {
  if (isWithin(durationOver, APART)) return [];
  return [
    asked(
      {
        code: 'duration-off',
        // Of an event that was told wrong the peak is half as far off.
        weight: 'strong',
        ask: 'Were both events read at the lift the card states, and each told from its right side?',
        size: `The duration is ${degrees(durationOver)}° ${durationOver > 0 ? 'over' : 'under'} the card’s; a side swapped is twice its angle.`,
        test: 'read both again, coming up to the lift in running direction.',
        restsOn: [],
      },
      {
        about: { of: 'side', valve: side },
        step: 'timing',
        among: id,
        answers,
        choices: [
          {
            code: 'not-found',
            label: 'Yes, looked: both are right',
            changes: 'The centreline counts as it was read.',
          },
          {
            code: 'found',
            label: 'No, one was read or told wrong',
            changes: 'Both events are read again; that counts then.',
          },
        ],
      },
    ),
  ];
}

/** Somebody looked, and one of its events had been read or told wrong. */
export const isFoundWrong = (peak: HeldPeak, evidence: Evidence): boolean =>
  durationOff(peak, evidence).some(({ answered }) => answered?.found === true);
