import { LOCKING, WEAR } from '../../noise/causes.ts';
import type { Effect } from '../../noise/effects.ts';
import type { Fact } from '../../noise/weigh.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { chosenOf } from '../common/chosen.ts';
import { keyOf, placeOf } from '../common/said.ts';
import type { ValvePlace } from '../evidence.ts';
import { SEAT_LOOKED, SEAT_WORN } from '../lash/seat-looked.ts';

/**
 * A gap that closed at one heat with its lock where it was: the valve went up into its seat. What wears in the valve train
 * opens a gap, and so does a stud that comes out; a worn nose shows in no gap. Common practice, no published source.
 */
const CLOSED: Effect = {
  for: ['seat'],
  against: [...LOCKING, 'stud', ...WEAR.filter((cause) => cause !== 'lobe')],
};
const WORN: Effect = { for: ['seat'], against: [], shows: ['seat'] };
const LOOKED: Effect = { for: [], against: ['seat'] };

/** What the log asks of valves that may be sinking: of the one that is named, else of all. */
export const seatsRaised = (
  raised: readonly AssessedQuestion[],
  fits: (place: ValvePlace) => boolean,
): AssessedQuestion[] =>
  raised.filter(({ code, about }) => code === SEAT_LOOKED && about.of === 'valve' && fits(about));

/** Nobody has answered yet what a shop found there. */
export const isSeatAsked = (question: AssessedQuestion): boolean => chosenOf(question) === undefined;

/** A gap that closed, and what was found at valve and seat since. */
export const seatFacts = (seats: readonly AssessedQuestion[]): Fact[] =>
  seats.flatMap((question): Fact[] => {
    const { about, restsOn } = question;
    if (about.of !== 'valve') return [];
    const chosen = chosenOf(question);
    const place = placeOf(about);
    const closed: Fact = {
      ...CLOSED,
      key: `seat-closed:${keyOf(about)}`,
      restsOn,
      text: `Lash log: the gap of ${place} closed at one heat`,
    };
    if (chosen === undefined) return [closed];
    const found: Fact = {
      ...(chosen === SEAT_WORN ? WORN : LOOKED),
      key: `seat-looked:${keyOf(about)}`,
      restsOn,
      text:
        chosen === SEAT_WORN
          ? `Valve and seat of ${place}: one of them is worn or sunk`
          : `Valve and seat of ${place}: looked at, and sound or put right`,
    };
    return [closed, found];
  });
