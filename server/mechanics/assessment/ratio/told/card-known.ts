import { planOf } from '../../../../../shared/schemas/goals.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { asked } from '../../common/asked.ts';
import { chosenOf } from '../../common/chosen.ts';
import type { Evidence, LobeCard } from '../../evidence.ts';

/** The word of the question whether there is a card at all. */
export const CARD_KNOWN = 'card-known';
const NONE = 'no-card';

const isEmpty = (lobe: LobeCard): boolean => Object.values(lobe).every((value) => value === undefined);

/** Nothing was read off a card yet. */
const hasNoFigure = ({ card }: Evidence): boolean =>
  card.assumedRatio === undefined && isEmpty(card.intake) && isEmpty(card.exhaust);

/** A used cam may have no card: that is an answer, and nothing waits for the card any more. A change needs its figures. */
export function cardQuestion(evidence: Evidence): AssessedQuestion[] {
  const plan = planOf(evidence.call.goal);
  if (!plan.asks.includes('cam') || plan.isChange === true || evidence.setUps.length === 0) return [];
  const question = asked(
    {
      code: CARD_KNOWN,
      weight: 'weak',
      ask: 'Is there a card for this cam?',
      size: 'Without one the lobe counts as it was read, and nothing is set against the ratio a card assumes.',
      test: 'Ask who bought the cam, and look on its box and its nose.',
      byLooking: true,
      restsOn: [],
    },
    {
      about: { of: 'build' },
      step: 'cam',
      answers: evidence.answers,
      choices: [
        { code: NONE, label: 'There is no card', changes: 'Its figures are asked for no more.' },
        { code: 'card', label: 'Yes', changes: 'Its figures are put in.' },
      ],
    },
  );
  return hasNoFigure(evidence) || question.answered !== undefined ? [question] : [];
}

/** Nobody said yet whether there is one. */
export const isCardAsked = (evidence: Evidence): boolean =>
  cardQuestion(evidence).some(({ answered }) => answered === undefined);

/** Somebody looked, and there is none. */
export const isWithoutCard = (evidence: Evidence): boolean =>
  hasNoFigure(evidence) && cardQuestion(evidence).some((question) => chosenOf(question) === NONE);
