import type { Sizes } from './sizes.ts';
import type { Cause, Entry } from './types.ts';
import { bare, byAbout, inches } from './words.ts';

const READ_SMALL_HAND = 'Take one more pass: read the small hand, and say which way the big hand runs.';
const TOUCH_VALVE = 'Touch the valve while its lobe lifts it, then read the card out again.';
const LOBE_AT_LIFTER = 'Read the lobe at the lifter.';

/** Could it be so? With its size, and the test that settles it. */
export function askAbout(cause: Cause, s: Sizes, entry: Entry | undefined): { text: string; test: string } {
  const onCard = entry?.of === 'card';
  switch (cause) {
    case 'turn-too-many':
      return {
        text: `Could one turn too many have been counted? That makes ${inches(s.extraTurn)}.`,
        test: READ_SMALL_HAND,
      };
    case 'turn-too-few':
      return {
        text: `Could one turn have been missed? That makes ${inches(s.missingTurn)}.`,
        test: READ_SMALL_HAND,
      };
    case 'hand-read-backwards':
      return {
        text: `Could the hand have been read backwards? That makes ${inches(s.turnedRound)}.`,
        test: READ_SMALL_HAND,
      };
    case 'lash-left-in':
      return {
        text: `Could lash of about ${inches(s.lash)} be left in?`,
        test: 'Take the lash out and read again.',
      };
    case 'plunger-tilted':
      return {
        text: `Could the plunger lean about ${s.lean.toFixed(0)} degrees?`,
        test: 'Set it parallel to the stem, seen from the front and the side, and read again.',
      };
    case 'zero-moved':
      return {
        text: `Could the zero have moved${byAbout(s.zero)}?`,
        test: 'Turn back to the base circle and see whether the dial returns to zero.',
      };
    case 'wrong-card-row':
      return {
        text: `Could it be the other row of the card? That makes the lobe ${inches(s.lobe)}.`,
        test: TOUCH_VALVE,
      };
    case 'wrong-valve':
      return { text: `Could it be the other valve? Its lobe lifts ${inches(s.lobe)}.`, test: TOUCH_VALVE };
    case 'valve-lift-as-lobe':
      return {
        text: `Could ${inches(s.cardEntered)} be a valve lift? That makes the lobe ${inches(s.lobe)}.`,
        test: `Read the card out again: lobe lift or valve lift? ${LOBE_AT_LIFTER}`,
      };
    case 'card-not-this-lobe':
      return {
        text: `Could the card be another cam's? The lobe would lift about ${inches(s.lobe)}.`,
        test: LOBE_AT_LIFTER,
      };
    case 'slip':
      return {
        text: onCard
          ? `Could the card say ${inches(s.card)} instead of ${inches(s.cardEntered)}?`
          : `Could ${inches(s.entered)} have been ${inches(s.unslipped)}?`,
        test: 'Enter it again.',
      };
    case 'unit-or-decimal':
      return {
        text: onCard
          ? `Could the card's ${bare(s.cardEntered)} be in another unit, or its point misplaced? That makes ${inches(s.card)}.`
          : `Could ${bare(s.entered)} be in another unit, or its point misplaced? That makes ${inches(s.unitPutRight)}.`,
        test: 'Say the unit and enter it again.',
      };
    case 'unlisted-fault':
      return {
        text: `Could something else have shifted the reading${byAbout(s.zero)}?`,
        test: 'Set the indicator up again, or read the arm on another valve.',
      };
    case 'passes-scatter':
      return {
        text: 'Could the set-up be loose? The readings scatter.',
        test: 'Tighten the base and take three more passes.',
      };
    case 'ratio-not-listed':
      return { text: 'Could the ratio be one that is not listed?', test: 'Look up the part number.' };
  }
}
