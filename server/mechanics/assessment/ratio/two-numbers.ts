import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import type { ArmEvidence, Evidence } from '../evidence.ts';
import { type Stamp, stampRead } from './stamp-read.ts';

/* One stamp, two numbers that could be its ratio: “1.5 1.6”, “1.6/1.5”. None of them is taken for it by itself. */

/** What parts two numbers of one mark; a comma between two figures is a decimal comma. */
const BETWEEN = /\s*(?:[/;|&+]|,(?=\s)|\band\b|\bor\b)\s*|\s+/i;

/** The numbers of a mark that could be a ratio, each ratio once; of a mark that is one number, that one. */
export function numbersIn(text: string): Stamp[] {
  const read = text
    .trim()
    .split(BETWEEN)
    .flatMap((each) => stampRead(each) ?? []);
  return read.filter((each, at) => read.findIndex(({ ratio }) => ratio === each.ratio) === at);
}

export const TWO_NUMBERS = 'stamp-two-numbers';

/** The answers that such a mark may have: each of its numbers by its place, or none of them. */
export const numberChoices = (numbers: readonly Stamp[]): AnswerChoice[] => [
  ...numbers.map(({ text }, at) => ({
    code: `number-${at + 1}`,
    label: `${text} is the ratio`,
    changes: 'It counts as the stamp; the other is another number.',
  })),
  {
    code: 'neither',
    label: 'Neither, or nobody can tell',
    changes: 'The mark is told as it stands, and nothing is set against it.',
  },
];

/** The number that was said to be the ratio. */
export const numberChosen = (numbers: readonly Stamp[], chosen: string | undefined): Stamp | undefined =>
  numbers.find((_, at) => chosen === `number-${at + 1}`);

export const twoNumbersAsk = (text: string, numbers: readonly Stamp[]): string =>
  `“${text.trim()}” has ${numbers.length === 2 ? 'two' : numbers.length} numbers that could be a ratio: which of them is it?`;

/** Which number of its stamp is the ratio of an arm; nothing where it has one, or none. */
export function twoNumbersAsked({ answers }: Evidence, arm: ArmEvidence): AssessedQuestion | undefined {
  const numbers = numbersIn(arm.ratioStamp);
  if (numbers.length < 2) return undefined;
  const question = asked(
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
  return question.answered === undefined ? question : { ...question, weight: 'weak' };
}

/** The stamp of an arm as one ratio: its only number, or the one that was said to be the ratio. */
export function oneNumberOf(evidence: Evidence, arm: ArmEvidence): Stamp | undefined {
  const question = twoNumbersAsked(evidence, arm);
  return question === undefined
    ? stampRead(arm.ratioStamp)
    : numberChosen(numbersIn(arm.ratioStamp), chosenOf(question));
}
