import { defined } from '../../../../shared/defined.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { NEAR } from '../../lash/lash-slips.ts';
import type { AssessedQuestion } from '../assessment.ts';
import type { Evidence, LashEvidence, Side } from '../evidence.ts';
import { asked } from './asked.ts';
import { chosenOf } from './chosen.ts';
import { byPlace, inches, placeOf } from './said.ts';
import { usableLash } from './usable-lash.ts';

/** The word of the question. */
export const SIDES_SWAPPED = 'lash-sides-swapped';

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'set-so',
    label: 'The valves were set so',
    changes: 'The log stays; each side is set to its own figure of the card.',
  },
  {
    code: 'entered-so',
    label: 'They were entered the wrong way round',
    changes: 'They are put right in the log; nothing is set by them before.',
  },
  {
    code: 'card',
    label: 'The card was read out the wrong way round',
    changes: 'The card is put right; nothing is set by it before.',
  },
  {
    code: 'meant',
    label: 'They are meant to be so',
    changes: 'The log stays, and the card is not gone by.',
  },
];

const SAID: Readonly<Record<string, string>> = {
  'set-so': 'The sides were set to one another’s lash: each is set to its own figure of the card.',
  'entered-so':
    'The lashes of the two sides were entered the wrong way round: they are put right in the log first.',
  card: 'The card’s lashes were read out the wrong way round: they are put right on the card first.',
};

const isNear = (a: number, b: number): boolean => Math.abs(a - b) <= NEAR + EQUAL;

/** Answers by which log and card are not of one valve each until one of them is put right. */
const WRONG: ReadonlySet<string> = new Set(['entered-so', 'card']);

/** Of two sides whose lashes stand for one another. */
export interface SidesSwapped {
  readonly question: AssessedQuestion;
  /** What is told of it: the question, or what its answer comes to. */
  readonly said?: string;
  /** Nothing is set by these figures yet. */
  readonly holds: boolean;
}

/**
 * Every intake at the exhaust's lash and every exhaust at the intake's: swapped by whoever set them, wrote them down or read
 * the card out (trade practice 7).
 */
export function sidesSwapped(evidence: Evidence): SidesSwapped | undefined {
  const { card, answers } = evidence;
  const [intake, exhaust] = [card.intake.lash, card.exhaust.lash];
  if (intake === undefined || exhaust === undefined || isNear(intake, exhaust)) return undefined;
  const standing = evidence.lash.filter((line) => line.standing);
  const places = [...new Map(standing.map((line) => [placeOf(line), line])).values()].toSorted(byPlace);
  const lines = places.flatMap((place) => usableLash(evidence, place) ?? []);
  const atHeat = lines.filter(
    ({ engine }) => card.lashAt === undefined || engine === 'not-said' || engine === card.lashAt,
  );
  const of = (side: Side): LashEvidence[] => atHeat.filter(({ valve }) => sideOfValve(valve) === side);
  const isOther = (own: readonly LashEvidence[], other: number, printed: number): boolean =>
    own.length > 0 &&
    own.every(({ gap: { value } }) => value !== undefined && isNear(value, other) && !isNear(value, printed));
  if (!isOther(of('intake'), exhaust, intake) || !isOther(of('exhaust'), intake, exhaust)) return undefined;
  const ids = atHeat.map(({ id }) => id).toSorted();
  const question = asked(
    {
      code: SIDES_SWAPPED,
      weight: 'strong',
      ask: 'Are the lashes of intake and exhaust the wrong way round: set so, entered so, or read out so?',
      size: `The card has ${inches(intake)} for the intake and ${inches(exhaust)} for the exhaust; every intake on the log is near the exhaust’s, and every exhaust near the intake’s.`,
      test: 'look at the card and at what was written down, with nothing turned.',
      byLooking: true,
      restsOn: ids,
    },
    { about: { of: 'build' }, step: 'adjuster', among: ids.join('-'), answers, choices: CHOICES },
  );
  const chosen = chosenOf(question);
  return {
    question,
    holds: chosen === undefined || WRONG.has(chosen),
    ...defined({
      said: chosen === undefined ? `${question.ask} ${question.size ?? ''}` : SAID[chosen],
    }),
  };
}
