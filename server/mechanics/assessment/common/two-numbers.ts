import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import type { ArmEvidence, Evidence } from '../evidence.ts';
import { asked } from './asked.ts';
import { chosenOf } from './chosen.ts';
import { picked, pickOf } from './pick.ts';
import { onlyRatioIn, ratiosIn, type Stamp } from './stamp-read.ts';

/* One stamp, two numbers that could be its ratio: “1.5 1.6”, “1.6/1.5”. None of them is taken for it by itself. */

const PICK = 'number';
export const TWO_NUMBERS = 'stamp-two-numbers';

/** The answers that such a mark may have: each of its numbers by its place, or none of them. */
export const numberChoices = (numbers: readonly Stamp[]): AnswerChoice[] => [
  ...numbers.map(({ text }, at) => ({
    code: pickOf(PICK, at),
    label: `${text} is the ratio`,
    changes:
      numbers.length > 2
        ? 'It counts as the stamp; the others are other numbers.'
        : 'It counts as the stamp; the other is another number.',
  })),
  {
    code: 'neither',
    label: 'Neither, or nobody can tell',
    changes: 'The mark is told as it stands, and nothing is set against it.',
  },
];

/** The number that was said to be the ratio: it needs no point any more to be held for it. */
export function numberChosen(numbers: readonly Stamp[], chosen: string | undefined): Stamp | undefined {
  const one = picked(PICK, numbers, chosen);
  return one === undefined ? undefined : { ...one, dotted: true };
}

/** Which of the numbers of a mark is its ratio. */
export const twoNumbersAsk = (text: string, numbers: readonly Stamp[]): string =>
  `“${text.trim()}” has ${numbers.length === 2 ? 'two' : numbers.length} numbers that could be a ratio: which of them is it?`;

/** Which number of its stamp is the ratio of an arm; nothing where it has one, or none. */
export function twoNumbersAsked({ answers }: Evidence, arm: ArmEvidence): AssessedQuestion | undefined {
  const numbers = ratiosIn(arm.ratioStamp);
  if (numbers.length < 2) return undefined;
  return asked(
    {
      code: TWO_NUMBERS,
      weight: 'strong',
      ask: `${arm.name}: ${twoNumbersAsk(arm.ratioStamp, numbers)}`,
      knownBy: 'which number of the stamp is the ratio',
      test: 'look where each number stands on the arm, and read the box by itself.',
      byLooking: true,
      restsOn: [],
    },
    {
      about: { of: 'arm', armId: arm.id, name: arm.name },
      step: 'parts',
      // Of these numbers alone: a stamp that is put right is asked once more.
      among: numbers.map(({ ratio }) => ratio.toFixed(3)).join('-'),
      answers,
      choices: numberChoices(numbers),
    },
  );
}

/** The stamp of an arm as one ratio: its only number, or the one that was said to be the ratio. */
export function oneNumberOf(evidence: Evidence, arm: ArmEvidence): Stamp | undefined {
  const question = twoNumbersAsked(evidence, arm);
  return question === undefined
    ? onlyRatioIn(arm.ratioStamp)
    : numberChosen(ratiosIn(arm.ratioStamp), chosenOf(question));
}
