import { closedSaid } from '../../lash/lash-questions.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import type { Closing } from './closings.ts';

const [SOUND, WORN, MENDED] = ['sound', 'worn', 'put-right'] as const;
/** What was found there, asked of a valve that may be sinking. */
export const SEAT_LOOKED = 'seat-looked';
export const SEAT_WORN = WORN;

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: SOUND,
    label: 'Looked: both are sound',
    changes: 'The valve may be set and run; why its gap closed is not known yet.',
  },
  {
    code: WORN,
    holds: true,
    label: 'Looked: one of them is worn or sunk',
    changes: 'The shop puts valve and seat right, and the gap is set last.',
  },
  {
    code: MENDED,
    label: 'It was put right',
    changes: 'The gap is set, and read again once it has run.',
  },
];

/** What its answers do, and how they are told after what the gap did. */
export const SEAT: {
  readonly settled: ReadonlySet<string>;
  /** @param past it was set again since */
  readonly said: Readonly<Record<string, (past: boolean) => string>>;
} = {
  settled: new Set([SOUND, MENDED]),
  said: {
    [SOUND]: () =>
      'Valve and seat were looked at and are sound, as was answered: why it closed is not known.',
    [WORN]: () =>
      'Valve or seat is worn, as was answered: a qualified shop puts that right, and the gap is set last.',
    [MENDED]: (past) =>
      `Valve and seat were put right, as was answered${past ? '' : ': the gap is set, and read again'}.`,
  },
};

/** A valve that may be sinking: told until somebody looked, of each setting that it had closed from. */
export function seatQuestion(
  place: ValvePlace,
  { base, growth }: Closing,
  limit: number,
  { answers }: Evidence,
): AssessedQuestion {
  const raised = asked(
    {
      code: SEAT_LOOKED,
      weight: 'strong',
      ask: `What did a qualified shop find at valve and seat of ${placeOf(place)}?`,
      knownBy: 'what was found at valve and seat',
      size: closedSaid(growth, limit),
      test: 'leave the gap alone, and have a qualified shop look at valve and seat.',
      byLooking: true,
      restsOn: [base.id],
    },
    { about: valveSubject(place), step: 'adjuster', among: base.id, answers, choices: CHOICES },
  );
  return chosenOf(raised) === WORN
    ? { ...raised, test: 'Have a qualified shop put valve and seat right; the gap is set last.' }
    : raised;
}
