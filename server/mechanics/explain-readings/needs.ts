import type { Sizes } from './sizes.ts';
import type { Cause, Entry } from './types.ts';
import { bare, byAbout, inches, isNone, nameText, ratioText } from './words.ts';

const shiftedBy = (zero: number): string =>
  isNone(zero)
    ? 'something not listed here shifted the reading'
    : `something not listed here made it read about ${inches(Math.abs(zero))} too ${zero < 0 ? 'low' : 'high'}`;

/** What must be true for one mistake, as the part of a sentence after "only if". */
export function needOf(cause: Cause, s: Sizes, entry: Entry | undefined): string {
  const onCard = entry?.of === 'card';
  switch (cause) {
    case 'turn-too-many':
      return `one turn too many was counted, so ${inches(s.entered)} is really ${inches(s.extraTurn)}`;
    case 'turn-too-few':
      return `a turn was missed, so ${inches(s.entered)} is really ${inches(s.missingTurn)}`;
    case 'hand-read-backwards':
      return `the hand was read backwards, so ${inches(s.entered)} is really ${inches(s.turnedRound)}`;
    case 'lash-left-in':
      return `lash of about ${inches(s.lash)} was left in`;
    case 'plunger-tilted':
      return `the plunger leaned about ${s.lean.toFixed(0)} degrees from the stem`;
    case 'zero-moved':
      return `the zero moved${byAbout(s.zero)}`;
    case 'wrong-card-row':
      return `the wrong row of the card was read: this lobe lifts ${inches(s.lobe)}, not ${inches(s.cardEntered)}`;
    case 'wrong-valve':
      return `the other valve was measured, whose lobe lifts ${inches(s.lobe)}`;
    case 'valve-lift-as-lobe':
      return `${inches(s.cardEntered)} on the card is a valve lift, which makes the lobe ${inches(s.lobe)}`;
    case 'card-not-this-lobe':
      return `the card is not of this lobe, which lifts about ${inches(s.lobe)}, not ${inches(s.cardEntered)}`;
    case 'slip':
      return onCard
        ? `the card's lobe lift slipped: ${inches(s.card)} was written ${inches(s.cardEntered)}`
        : `the entry slipped: ${inches(s.unslipped)} was written ${inches(s.entered)}`;
    case 'unit-or-decimal':
      return onCard
        ? `the card's ${bare(s.cardEntered)} has another unit or its point misplaced and means ${inches(s.card)}`
        : `the reading ${bare(s.entered)} has another unit or its point misplaced and means ${inches(s.unitPutRight)}`;
    case 'unlisted-fault':
      return shiftedBy(s.zero);
    case 'passes-scatter':
      return 'the readings scatter far more than a steady set-up does';
    case 'ratio-not-listed':
      return 'the ratio is none of those listed';
  }
}

/** ` made 3 % over`: what a reading off its name stands for, where nothing went wrong with it. */
function madeOff(nominal: number, ratio: number): string {
  const percent = Math.round((ratio / nominal - 1) * 100);
  return percent === 0 ? '' : ` made ${Math.abs(percent)} % ${percent > 0 ? 'over' : 'under'}`;
}

/** The plain sentence of an explanation. `nominal` is left out for a ratio that is not listed. */
export function needsSentence(nominal: number | undefined, ratio: number, needs: readonly string[]): string {
  const measured = ratioText(ratio);
  if (nominal === undefined) return `An arm of about ${measured}, if ${needs.join(' and ')}.`;
  if (needs.length === 0) {
    return `A ${nameText(nominal)}${madeOff(nominal, ratio)}, if the readings are right as they stand.`;
  }
  return `A ${nameText(nominal)} that gives ${measured} here, if ${needs.join(' and ')}.`;
}
