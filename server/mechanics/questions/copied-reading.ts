import { within } from './compare.ts';
import { idsOf, isOrdinary, ratioOfCard, valveLift } from './lifts.ts';
import { manyAlike, peaksAlike } from './many-alike.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { countText, inch, nominalText } from './words.ts';

/** A lift that the card makes to the last graduation, under arms that make another one: is it of the dial or of the card? */
function asOnCard(input: QuestionInput, t: Tolerances): Question[] {
  const { valvePasses, cardLobeLift, cardValveLift, graduation, nominalRatio } = input;
  const ofCard = ratioOfCard(input);
  if (ofCard === undefined || nominalRatio === undefined || cardLobeLift === undefined) return [];
  if (within(ofCard - nominalRatio, t.cardRatioApart)) return [];
  const printed = [cardLobeLift * ofCard, ...(cardValveLift === undefined ? [] : [cardValveLift])];
  const isPrinted = (lift: number) => printed.some((each) => within(lift - each, graduation / 2));
  const [first] = valvePasses;
  if (first === undefined || !valvePasses.every(({ lift }) => isPrinted(lift) && !isOrdinary(input, t, lift)))
    return [];
  return [
    {
      code: 'copied-reading',
      weight: 'weak',
      ask: `Was the valve lift of ${inch(first.lift)} read, or is it the card’s?`,
      knownBy: 'was the valve lift read or is it the cards',
      size: `The card’s ${inch(cardLobeLift)} of lobe by its ${nominalText(ofCard)} makes ${inch(cardLobeLift * ofCard)}.`,
      test: 'Read it once more, and write down what the dial shows.',
      restsOn: idsOf(valvePasses),
    },
  ];
}

/** Row 16: one number on many valves, or that of the card. */
export function copiedReading(input: QuestionInput, tolerances: Tolerances): Question[] {
  return [...onMany(input, tolerances), ...asOnCard(input, tolerances)];
}

function onMany(input: QuestionInput, tolerances: Tolerances): Question[] {
  const lift = valveLift(input);
  if (lift === undefined || !manyAlike(input, tolerances, tolerances.copiedPeak)) return [];
  const alike = peaksAlike(input, tolerances.copiedPeak);
  const all = alike === (input.otherPeaks ?? []).length;
  return [
    {
      code: 'copied-reading',
      weight: all && alike >= tolerances.peaksForCopy ? 'strong' : 'weak',
      ask: 'Was each valve read, or was one number carried over?',
      size: `${inch(lift)} stands for ${countText(alike)} other readings as well.`,
      test: 'Touch one of those valves while its lobe lifts it, and read it again.',
      restsOn: idsOf(input.valvePasses),
    },
  ];
}
