import type {
  AssessedQuantity,
  AssessedQuestion,
  Assessment,
} from '../../../server/mechanics/assessment/assessment.ts';
import { DEG, IN, LBF } from '../../../server/mechanics/kit/si.ts';
import { figure, inline } from './inline.ts';

/** One thing that is said: what it is of, which no other line has, and its words. */
export type Line = readonly [of: string, words: string];

const UNITS = {
  ratio: { unit: '', si: 1 },
  length: { unit: ' in', si: IN },
  load: { unit: ' lbf', si: LBF },
  angle: { unit: '°', si: DEG },
} as const;

function figures({ dimension, value, low, high }: AssessedQuantity): string {
  const { unit, si } = UNITS[dimension];
  const [at, from, to] = [value, low, high].map((each) => (each === undefined ? '?' : figure(each / si)));
  return `${at}${unit} (${from} to ${to})`;
}

/** What has no figure yet is told by what is missing. */
const ofQuantity = (quantity: AssessedQuantity): Line => {
  const { id, name, basis, value, low, high, conditions } = quantity;
  const none = [value, low, high].every((each) => each === undefined);
  return [`quantity ${id}`, none ? '' : `${name}: ${[figures(quantity), basis, ...conditions].join(', ')}`];
};

function ofQuestion({
  id,
  weight,
  ask,
  size,
  test,
  testAtBench,
  answers,
  answered,
}: AssessedQuestion): Line[] {
  const of = `question ${id}`;
  const asked = [`${weight}: ${ask}`, ...(size === undefined ? [] : [size])];
  const offered = answers.map(({ code, label, changes }) => `${code}: ${label}: ${changes}`);
  return [
    [of, [...asked, ...(answered === undefined ? [] : [`Answered: ${answered.answer}`])].join(' / ')],
    [`${of} test`, [test, ...(testAtBench === undefined ? [] : [testAtBench])].join(' / ')],
    [`${of} answers`, offered.join(' / ')],
  ];
}

interface Said {
  readonly id: string;
  readonly sentence: string;
}

const sentences = (what: string, all: readonly Said[]): Line[] =>
  all.map(({ id, sentence }) => [`${what} ${id}`, sentence]);

/** Reasons not to turn or run it, with the way out. */
const stops = (
  what: string,
  all: readonly (Said & { readonly wayOut: string; readonly wayOutAtBench?: string })[],
) =>
  all.flatMap(({ id, sentence, wayOut, wayOutAtBench }): Line[] => [
    [`${what} ${id}`, sentence],
    [`${what} ${id} way out`, wayOut],
    [`${what} ${id} way out at the engine`, wayOutAtBench ?? ''],
  ]);

/** All that is said of a build and can be read, line by line; what is empty has none. */
export function said(assessment: Assessment): Line[] {
  const { headlines, stop, notToRun, judgements, questions, quantities, missing, next, explanations } =
    assessment;
  const lines: Line[] = [
    ...sentences('headline', headlines),
    ...stops('stop', stop),
    ...stops('not to run', notToRun),
    ...Object.entries(next ?? {}).map(([name, value]): Line => [`next ${name}`, inline(value)]),
    ...judgements.map(
      ({ id, word = 'no word', sentence, lacks }): Line => [
        `judgement ${id}`,
        [`${word}: ${sentence}`, ...lacks].join(' / '),
      ],
    ),
    ...questions.flatMap(ofQuestion),
    ...quantities.map(ofQuantity),
    ...explanations.map(
      ({ id, summary, refused = '' }): Line => [`explanation ${id}`, `${summary}${refused}`],
    ),
    ['missing', missing.map(({ sentence }) => sentence).join(' / ')],
  ];
  return lines.filter(([, words]) => words !== '');
}
