import type { AssessedQuestion } from '../../assessment.ts';
import type { Evidence } from '../../evidence.ts';
import { soldAsQuestion } from '../claims/sold-as.ts';
import { stampsUnasked } from '../claims/stamps-unasked.ts';
import { cardAgainstItselfAsked } from '../compared/card-doubted.ts';
import type { GroupExplained } from '../compared/explain.ts';
import type { SetUpKnown } from '../compared/known.ts';
import { differingAsked } from '../compared/set-ups-differ.ts';
import { stampAgainstSold } from '../compared/stamp-against-sold.ts';
import { cardQuestion } from './card-known.ts';
import { askedNow, askedOfArm, readAgainSince } from './settled.ts';
import { stampAsked, stampQuestions } from './stamp-doubt.ts';

/** An arm that was read on several valves is asked once, and where that weighs most. */
function ofEachArm(questions: readonly AssessedQuestion[]): AssessedQuestion[] {
  const strongFirst = questions.toSorted((a, b) => a.weight.localeCompare(b.weight));
  return strongFirst.filter(({ id }, index) => strongFirst.findIndex((each) => each.id === id) === index);
}

/** Everything that set-ups, arms and what they are held to be are asked. */
export function ratioQuestions(
  evidence: Evidence,
  {
    known,
    explained,
  }: { readonly known: readonly SetUpKnown[]; readonly explained: readonly GroupExplained[] },
): AssessedQuestion[] {
  const since = readAgainSince(explained);
  const askedArms = new Set(
    explained.flatMap(({ group, given }) => (given === undefined ? [] : (group.armId ?? []))),
  );
  return [
    ...askedNow(
      known.flatMap(({ questions }) => questions),
      since,
    ),
    ...differingAsked(known, since),
    ...ofEachArm(
      explained.flatMap((each) => [
        ...stampQuestions(evidence, each),
        // Whether the mark is the ratio is asked before what was ordered.
        ...(stampAsked(evidence, each).odd === undefined ? stampAgainstSold(evidence, each) : []),
      ]),
    ),
    ...stampsUnasked(evidence, askedArms),
    ...soldAsQuestion(evidence),
    ...cardQuestion(evidence),
    ...cardAgainstItselfAsked(evidence),
    ...explained.flatMap(askedOfArm),
  ];
}
