import { within } from './compare.ts';
import { idsOf, ratioOfCard, valveLift } from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { inch, nominalText, ratioText } from './words.ts';

/** True if the card's valve lift is the lobe times the nominal after all, once the lash is counted in. */
function isNetOfLash(input: QuestionInput, t: Tolerances, nominal: number): boolean {
  const { cardRatio, cardValveLift, cardLobeLift, cardLash } = input;
  if (cardRatio !== undefined || cardValveLift === undefined || cardLobeLift === undefined) return false;
  return within((cardValveLift + (cardLash ?? 0)) / cardLobeLift - nominal, t.cardRatioApart);
}

/** Strong where the card prints a valve lift and the reading meets it or the rockers' own, not both. */
function weightOf(input: QuestionInput, t: Tolerances, ownLift: number | undefined): Question['weight'] {
  const valve = valveLift(input);
  if (valve === undefined || ownLift === undefined || input.cardValveLift === undefined) return 'weak';
  const meetsOwn = within(valve - ownLift, t.liftFits);
  const meetsCard = within(valve - input.cardValveLift, t.liftFits);
  return meetsOwn === meetsCard ? 'weak' : 'strong';
}

/** What a card has of one lobe, in inches. */
type CardFigures = Pick<QuestionInput, 'cardRatio' | 'cardValveLift' | 'cardLobeLift' | 'cardLash'>;

/** The card says one ratio and prints lifts of another, gross or net of its lash. */
export function cardAgainstItself(
  input: CardFigures,
  t: Tolerances,
): (Omit<Question, 'code'> & { readonly code: 'card-against-itself' })[] {
  const { cardRatio, cardValveLift, cardLobeLift, cardLash = 0 } = input;
  if (cardRatio === undefined || cardValveLift === undefined || cardLobeLift === undefined) return [];
  const made = [cardValveLift, cardValveLift + cardLash].map((lift) => lift / cardLobeLift);
  if (made.some((ratio) => within(ratio - cardRatio, t.cardRatioApart))) return [];
  const of = cardValveLift / cardLobeLift;
  return [
    {
      code: 'card-against-itself',
      weight: 'strong',
      ask: `Which is right on the card? It says ${nominalText(cardRatio)}, and its lifts make ${ratioText(of)}.`,
      size: `${inch(cardValveLift)} over ${inch(cardLobeLift)} is ${ratioText(of)}.`,
      test: 'Read the card out again: ratio, lobe lift and valve lift.',
      restsOn: [],
    },
  ];
}

/** Row 4: the card's valve lift is for another ratio than the rockers fitted. */
export function cardRatio(input: QuestionInput, tolerances: Tolerances): Question[] {
  const ofCard = ratioOfCard(input);
  const nominal = input.nominalRatio;
  if (ofCard === undefined || nominal === undefined) return [];
  if (within(ofCard - nominal, tolerances.cardRatioApart)) return [];
  if (isNetOfLash(input, tolerances, nominal)) return [];
  // The card is for what they are sold as: then the stamp is the odd one.
  if (input.alsoHeldAs?.some((ratio) => within(ofCard - ratio, tolerances.cardRatioApart))) return [];
  const lobe = input.cardLobeLift;
  const ownLift = lobe === undefined ? undefined : lobe * nominal;
  const size =
    lobe === undefined || ownLift === undefined
      ? `The ratios are ${nominalText(Math.abs(ofCard - nominal))} apart.`
      : `A ${inch(lobe)} lobe lifts the valve ${inch(lobe * ofCard)} with ${nominalText(ofCard)}, and ${inch(ownLift)} with ${nominalText(nominal)}.`;
  return [
    {
      code: 'card-ratio',
      weight: weightOf(input, tolerances, ownLift),
      ask: `Could the card be for another rocker? It works with ${nominalText(ofCard)}; these are ${input.nominalFrom === 'mark' ? 'stamped' : 'sold as'} ${nominalText(nominal)}.`,
      size,
      test: 'Read the ratio off the card, then set the reading against lobe lift times the rocker fitted.',
      restsOn: idsOf(input.valvePasses),
    },
  ];
}
