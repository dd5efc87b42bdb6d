import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { IN } from '../../kit/si.ts';
import type { AssessedQuestion, Headline } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { inches } from '../common/said.ts';
import { usableLash } from '../common/usable-lash.ts';
import type { Evidence, LashEvidence, Side } from '../evidence.ts';
import type { LashValveDetail } from './detail.ts';

/** What a lash is tuned by, ±.002 in: nearer two figures are one; common practice, no published source. */
const NEAR = 0.002 * IN;

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

interface Swapped {
  readonly questions: readonly AssessedQuestion[];
  readonly headlines: readonly Headline[];
}

/**
 * Every intake at the exhaust's lash and every exhaust at the intake's: swapped by whoever set them, wrote them down or read
 * the card out (trade practice 7).
 */
export function sidesSwapped(valves: readonly LashValveDetail[], evidence: Evidence): Swapped {
  const { card, answers } = evidence;
  const [intake, exhaust] = [card.intake.lash, card.exhaust.lash];
  if (intake === undefined || exhaust === undefined || isNear(intake, exhaust))
    return { questions: [], headlines: [] };
  const lines = valves.flatMap((valve) => usableLash(evidence, valve) ?? []);
  const atHeat = lines.filter(
    ({ engine }) => card.lashAt === undefined || engine === 'not-said' || engine === card.lashAt,
  );
  const of = (side: Side): LashEvidence[] => atHeat.filter(({ valve }) => sideOfValve(valve) === side);
  const isOther = (own: readonly LashEvidence[], other: number, printed: number): boolean =>
    own.length > 0 &&
    own.every(({ gap: { value } }) => value !== undefined && isNear(value, other) && !isNear(value, printed));
  const swapped = isOther(of('intake'), exhaust, intake) && isOther(of('exhaust'), intake, exhaust);
  if (!swapped) return { questions: [], headlines: [] };
  const ids = atHeat.map(({ id }) => id).toSorted();
  const question = asked(
    {
      code: 'lash-sides-swapped',
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
  const sentence = chosen === undefined ? `${question.ask} ${question.size ?? ''}` : SAID[chosen];
  return {
    questions: [question],
    headlines:
      sentence === undefined
        ? []
        : [{ id: 'headline:lash-sides', about: { of: 'build' }, step: 'adjuster', sentence }],
  };
}
