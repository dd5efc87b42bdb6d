import { defined } from '../../../../../shared/defined.ts';
import type {
  AssessedExplanation,
  AssessedQuantity,
  AssessedQuestion,
  Assessment,
  Headline,
  Judgement,
} from '../../assessment.ts';
import { countedOnly } from '../../common/first-said.ts';
import { placeOf } from '../../common/said.ts';
import type { SetUpDetail } from './detail.ts';
import { groupKey } from './group-key.ts';

/** What the assessment says of the arm on the valve that a set-up was read on. */
export interface SaidOfSetUp {
  /** Left out where the headline of the valve is of another arm, or nothing was read there. */
  readonly headline?: Headline;
  /** What the judgement lacks that the headline is made of. */
  readonly headlineLacks: readonly string[];
  /** Without the one that the headline is made of. */
  readonly judgements: readonly Judgement[];
  /** Of this set-up, then those of the arm on this valve. */
  readonly questions: readonly AssessedQuestion[];
  readonly explanation?: AssessedExplanation;
  /** Its ratio and its lifts, each under its own name. */
  readonly quantities: readonly AssessedQuantity[];
}

/** Judgements of an arm on a valve, the word against what it is held to be first. */
const idsOf = (key: string, setUpId: string): readonly string[] => [
  `ratio:${key}:mark`,
  `ratio:${key}:sold-as`,
  `ratio:${key}:nominal`,
  `usual-deflection:${key}`,
  `card-ratio:${key}`,
  `card-lobe:${setUpId}`,
];

/** Chosen out of the assessment by what it is about: nothing is judged here. */
export function saidOfSetUp(assessment: Assessment, { setUp, questionIds }: SetUpDetail): SaidOfSetUp {
  const { headlines, judgements, questions, explanations, quantities } = assessment;
  const key = groupKey(setUp);
  const headline = headlines.find(({ quantityId }) => quantityId === `arm-ratio:${key}`);
  const explanation = explanations.find(({ id }) => id === `explanation:${key}`);
  return {
    ...defined({ headline }),
    headlineLacks: judgements.find(({ id }) => id === headline?.judgementId)?.lacks ?? [],
    judgements: idsOf(key, setUp.id)
      .filter((id) => id !== headline?.judgementId)
      .flatMap((id) => judgements.find((each) => each.id === id) ?? []),
    questions: [
      ...questions.filter(({ id }) => questionIds.includes(id)),
      ...questions.filter(
        ({ step, about }) =>
          step === 'ratio' &&
          ((about.of === 'valve' && placeOf(about) === placeOf(setUp)) ||
            (about.of === 'arm' && about.armId === setUp.armId)),
      ),
    ],
    ...defined({ explanation }),
    quantities: quantities.filter(({ about }) => about.of === 'set-up' && about.setUpId === setUp.id),
  };
}

/** A sentence, and what it only counts of what is lacking. */
export interface Told {
  readonly sentence: string;
  readonly more: readonly string[];
}

/** The headline, then the judgements, each as its own sentence. */
export const toldOf = ({ headline, headlineLacks, judgements }: SaidOfSetUp): Told[] => [
  ...(headline === undefined ? [] : [{ sentence: headline.sentence, more: countedOnly(headlineLacks) }]),
  ...judgements.map(({ sentence, lacks }) => ({ sentence, more: countedOnly(lacks) })),
];
