import { defined } from '../../../../shared/defined.ts';
import { DEFAULT_ASSUMPTIONS } from '../../explain-readings/assumptions.ts';
import { IN } from '../../kit/si.ts';
import type { AssessedExplanation, Subject } from '../assessment.ts';
import type { PartSaid } from '../common/part-said.ts';
import { valveSubject } from '../common/said.ts';
import type { SwapTold } from '../common/swap-told.ts';
import type { Evidence } from '../evidence.ts';
import type { PartDetail } from '../part/detail.ts';
import { judgedGroup } from './against.ts';
import { armsInHand } from './arms-in-hand.ts';
import { cardJudgements, cardQuantities } from './card.ts';
import { deflection } from './deflection.ts';
import type { SetUpDetail } from './detail.ts';
import { explainGroup, type GroupExplained } from './explain.ts';
import { groupsOf } from './groups.ts';
import { ratioHeadlines } from './headline.ts';
import { armRatio, explanationOf } from './inference.ts';
import { knownOf, type SetUpKnown } from './known.ts';
import { namesLeft } from './names.ts';
import { nominalsOf } from './nominals.ts';
import { ratioReadOf } from './reading.ts';
import { setUpDetail } from './set-up-detail.ts';
import { setUpQuantities } from './set-up-quantities.ts';
import { type SetUpRead, setUpsRead } from './set-up-read.ts';

/** What was read of the ratios, weighed but not told yet. */
interface RatioRead {
  readonly reads: readonly SetUpRead[];
  readonly known: readonly SetUpKnown[];
  readonly explained: readonly GroupExplained[];
}

/** What is said of the ratios. */
interface RatioSaid extends PartSaid<SetUpDetail[]> {
  readonly explanations: readonly AssessedExplanation[];
  readonly remaining: readonly { readonly about: Subject; readonly names: readonly number[] }[];
}

function remainingOf(explained: GroupExplained) {
  const { group, result } = explained;
  if (result === undefined) return [];
  const names = namesLeft(result, ratioReadOf(explained)).map(({ ratio }) => ratio);
  return [{ about: valveSubject(group), names }];
}

/** Every set-up put in order. */
export function ratioKnown(evidence: Evidence): Pick<RatioRead, 'reads' | 'known'> {
  const reads = setUpsRead(evidence);
  const nominals = nominalsOf(evidence);
  return { reads, known: reads.map((read) => knownOf(evidence, read, reads, nominals)) };
}

/** The inference once for every arm on every valve; `swaps`: what the swaps on record decided. */
export function ratioRead(
  evidence: Evidence,
  { reads, known } = ratioKnown(evidence),
  swaps: readonly SwapTold[] = [],
): RatioRead {
  const nominals = nominalsOf(evidence);
  const groups = groupsOf(evidence, reads, { within: DEFAULT_ASSUMPTIONS.lobesDiffer * IN, swaps });
  const explained = groups.map((group) => explainGroup(evidence, group, known, nominals));
  return { reads, known, explained };
}

/**
 * The ratio of every arm on every valve that was read: what it is, against what it is held to be, and what to ask.
 * `parts`: what was measured of loose arms. `stopped`: nobody turns it now, so no sentence asks for a reading.
 */
export function ratioPart(
  evidence: Evidence,
  read: RatioRead,
  parts: readonly PartDetail[],
  stopped: boolean,
): RatioSaid {
  const { reads, known, explained } = read;
  const judged = (each: GroupExplained) =>
    judgedGroup(each, { stopped, ...defined({ inHand: armsInHand(evidence, each, parts) }) });
  const deflections = explained.map((each) => deflection(evidence, each));
  const judgements = [
    ...explained.filter(({ given }) => given !== undefined).flatMap(judged),
    ...deflections.flatMap((each) => each.judgements),
    ...cardJudgements(evidence, explained, known, stopped),
  ];
  return {
    quantities: [
      ...known.flatMap(setUpQuantities),
      ...explained.flatMap(armRatio),
      ...deflections.flatMap((each) => each.quantities),
      ...cardQuantities(evidence),
    ],
    judgements,
    questions: [
      ...known.flatMap(({ questions }) => questions),
      ...explained.flatMap((each) => each.questions),
    ],
    stop: [],
    headlines: ratioHeadlines(evidence, explained, judgements),
    detail: known.map((each) => setUpDetail(evidence, each, reads)),
    explanations: explained.flatMap((each) => explanationOf(each, stopped)),
    remaining: explained.flatMap(remainingOf),
  };
}
