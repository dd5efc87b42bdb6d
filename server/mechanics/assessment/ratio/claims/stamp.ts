import type { StepName } from '../../../../../shared/steps.ts';
import type { AnswerChoice, AssessedQuestion } from '../../assessment.ts';
import { asked, isAskedAs } from '../../common/asked.ts';
import { asItIs, onceEach } from '../../common/once.ts';
import { keyOf, nominalSaid } from '../../common/said.ts';
import { onlyRatioIn, type Stamp } from '../../common/stamp-read.ts';
import { oneNumberOf } from '../../common/two-numbers.ts';
import type { AnswerEvidence, Evidence } from '../../evidence.ts';
import { partsInHand } from '../../part/in-hand.ts';
import { codeOf } from '../read/answers.ts';

export { isRatio, type Stamp } from '../../common/stamp-read.ts';

/** Marks of the parts in the hand that are this arm: they are on it, wherever they were read. */
const ofHand = (evidence: Evidence, armId: string): string[] =>
  partsInHand(evidence)
    .filter((part) => part.armId === armId)
    .flatMap(({ readings }) => readings.filter(({ kind }) => kind === 'ratio-stamp'))
    .map(({ typed }) => typed.trim());

/** The stamp of an arm; of one that was read as a part in the hand, the one that was read there. */
export const stampOf = onceEach(
  asItIs,
  (evidence: Evidence, armId: string | undefined): Stamp | undefined => {
    const arm = evidence.arms.find(({ id }) => id === armId);
    if (arm !== undefined && arm.ratioStamp.trim() !== '') return oneNumberOf(evidence, arm);
    const [text, ...others] = armId === undefined ? [] : [...new Set(ofHand(evidence, armId))];
    return text === undefined || others.length > 0 ? undefined : onlyRatioIn(text);
  },
);

const DIGITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** A mark spelt out: ids keep no digits, and an answer is about this mark alone. */
const spelt = (text: string): string => [...text].map((each) => DIGITS[Number(each)] ?? 'point').join(' ');

const CODE = 'stamp-is-ratio';

const CHOICES: readonly AnswerChoice[] = [
  { code: 'ratio', label: 'It is the ratio', changes: 'The reading is set against it.' },
  { code: 'other-number', label: 'It is another number', changes: 'Nothing is set against it.' },
  { code: 'not-known', label: 'Nobody can tell', changes: 'It stays undecided.' },
];

const BUILD = { of: 'build' } as const;

const idOf = (about: string, { text }: Stamp): string =>
  `question:${CODE}:${about}:stamp-${spelt(text).replaceAll(' ', '-')}`;

const askOf = (stamp: Stamp, on: string): string =>
  stamp.dotted
    ? `Is the ${nominalSaid(stamp.ratio)} stamped on ${on} the ratio, or another number?`
    : `Is the “${stamp.text}” on ${on} the ratio ${nominalSaid(stamp.ratio)}, or another number?`;

/** Arms that all carry one mark are asked about at once. */
const ON_THE_ARMS = 'the arms';

/** It is about this mark of all arms that carry it. */
const isOfAll = ({ questionId, question }: AnswerEvidence, stamp: Stamp): boolean =>
  questionId === undefined
    ? isAskedAs(question, askOf(stamp, ON_THE_ARMS))
    : questionId === idOf(keyOf(BUILD), stamp);

/** It is about this mark of this arm; with one arm alone the word of the question is enough. */
const isOfArm = (answer: AnswerEvidence, evidence: Evidence, armId: string, stamp: Stamp): boolean =>
  answer.questionId === undefined
    ? codeOf(answer) === CODE && evidence.arms.length === 1
    : answer.questionId === idOf(armId, stamp);

/** Whether the mark of this arm was answered of it alone: then it is none of those that are asked about together. */
export const isAnsweredAlone = (evidence: Evidence, armId: string, stamp: Stamp): boolean =>
  evidence.answers.some((answer) => isOfArm(answer, evidence, armId, stamp));

/** Answers about this mark of this arm, or of all arms that carry it. */
const answersTo = (evidence: Evidence, armId: string, stamp: Stamp): AnswerEvidence[] =>
  evidence.answers
    .filter((answer) => isOfAll(answer, stamp) || isOfArm(answer, evidence, armId, stamp))
    .toSorted((a, b) => a.line - b.line);

const saidOf = (answer: AnswerEvidence | undefined): string => answer?.answer.split(':')[0]?.trim() ?? '';

/** What is known of the mark of an arm that is not held to be its ratio. */
export type MarkState =
  | { readonly is: 'not-said' | 'no-ratio' | 'several' }
  | { readonly is: 'other-number' | 'undecided'; readonly text: string };

/** Nobody entered it, it is no ratio, two were read on it; it was said to be another number, or not what it is. */
export function markState(evidence: Evidence, armId: string | undefined): MarkState {
  const stamp = stampOf(evidence, armId);
  if (armId === undefined) return { is: 'not-said' };
  if (stamp !== undefined) {
    const said = saidOf(answersTo(evidence, armId, stamp).at(-1));
    return { is: said === 'other-number' ? 'other-number' : 'undecided', text: stamp.text };
  }
  const own = evidence.arms.find(({ id }) => id === armId)?.ratioStamp.trim() ?? '';
  const read = own === '' ? new Set(ofHand(evidence, armId)) : new Set([own]);
  return { is: read.size === 0 ? 'not-said' : read.size === 1 ? 'no-ratio' : 'several' };
}

/** The ratio stamped on an arm: with its point unless it was said to be another number, without it once it was said. */
export function markOn(evidence: Evidence, armId: string | undefined): number | undefined {
  const stamp = stampOf(evidence, armId);
  if (stamp === undefined || armId === undefined) return undefined;
  const said = saidOf(answersTo(evidence, armId, stamp).at(-1));
  return stamp.dotted
    ? said === 'other-number'
      ? undefined
      : stamp.ratio
    : said === 'ratio'
      ? stamp.ratio
      : undefined;
}

interface Doubted {
  readonly weight: AssessedQuestion['weight'];
  readonly size: string;
  readonly restsOn: readonly string[];
  /** Where it is asked; of a reading in a set-up, there. */
  readonly step?: StepName;
}

/** Whether the mark is the ratio: asked once of an arm, and the answer stays with it. */
export function stampQuestion(
  evidence: Evidence,
  armIds: readonly [string, ...string[]],
  stamp: Stamp,
  { weight, size, restsOn, step = 'ratio' }: Doubted,
): AssessedQuestion {
  const [armId, ...others] = armIds;
  const name = evidence.arms.find(({ id }) => id === armId)?.name ?? 'the arm';
  const about = others.length === 0 ? ({ of: 'arm', armId, name } as const) : BUILD;
  const questionId = idOf(keyOf(about), stamp);
  const answers =
    others.length === 0
      ? answersTo(evidence, armId, stamp)
      : evidence.answers.filter((answer) => isOfAll(answer, stamp));
  return asked(
    {
      code: CODE,
      weight,
      ask: askOf(stamp, others.length === 0 ? 'it' : ON_THE_ARMS),
      knownBy: `stamp ${spelt(stamp.text)}`,
      size,
      test: 'Read the mark on the arm again, word for word, then the box by itself.',
      byLooking: true,
      restsOn,
    },
    {
      about,
      step,
      answers: answers.map((answer) => ({ ...answer, questionId })),
      choices: CHOICES,
    },
  );
}
