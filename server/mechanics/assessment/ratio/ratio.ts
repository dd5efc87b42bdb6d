import { defined } from '../../../../shared/defined.ts';
import { DEFAULT_ASSUMPTIONS } from '../../explain-readings/assumptions.ts';
import { IN } from '../../kit/si.ts';
import type { AssessedExplanation, NotToRun, StopReason, Subject } from '../assessment.ts';
import type { PartSaid } from '../common/part-said.ts';
import { byId, placeOf, valveSubject } from '../common/said.ts';
import type { SwapTold } from '../common/swap-told.ts';
import type { Evidence } from '../evidence.ts';
import type { PartDetail } from '../part/detail.ts';
import { cardQuantities } from './claims/card-lifts.ts';
import { nominalsOf } from './claims/nominals.ts';
import { explainGroup, type GroupExplained } from './compared/explain.ts';
import { groupsOf } from './compared/groups.ts';
import { knownOf, type SetUpKnown } from './compared/known.ts';
import {
  cardIsOther,
  cardSaid,
  isDown,
  isStopped,
  lobeNotToRun,
  whoseNotToRun,
} from './compared/lobe-low.ts';
import { withPoor } from './compared/poor.ts';
import { ratioReadOf } from './compared/reading.ts';
import { putAside, withDiffering } from './compared/set-ups-differ.ts';
import { withSpringsAgainst } from './compared/springs-against.ts';
import { soldOtherwiseSaid } from './compared/stamp-against-sold.ts';
import type { SetUpDetail } from './read/detail.ts';
import { type SetUpRead, setUpsRead } from './read/set-up-read.ts';
import { judgedGroup } from './told/against.ts';
import { armsInHand } from './told/arms-in-hand.ts';
import { bucketLifts } from './told/bucket-lift.ts';
import { cardHeadlines, cardJudged } from './told/card.ts';
import { type Chances, chancesOf } from './told/chances.ts';
import { deflection } from './told/deflection.ts';
import { ratioHeadlines } from './told/headline.ts';
import { armRatio, explanationOf } from './told/inference.ts';
import { lashHeadlines } from './told/lash-was-in.ts';
import { lobeAgainstCard, lobeHeadlines, lobesOff, lobesOfWhom } from './told/lobe-card.ts';
import { namesLeft } from './told/names.ts';
import { ratioQuestions } from './told/ratio-questions.ts';
import { setUpDetail } from './told/set-up-detail.ts';
import { setUpQuantities } from './told/set-up-quantities.ts';
import { stampAsked } from './told/stamp-doubt.ts';

/** What was read of the ratios, weighed but not told yet. */
interface RatioRead {
  readonly reads: readonly SetUpRead[];
  readonly known: readonly SetUpKnown[];
  readonly explained: readonly GroupExplained[];
}

/** What is said of the ratios. */
interface RatioSaid extends PartSaid<SetUpDetail[]> {
  readonly explanations: readonly AssessedExplanation[];
  readonly notToRun: readonly NotToRun[];
  readonly remaining: readonly { readonly about: Subject; readonly names: readonly number[] }[];
}

/** Names only where their chances may stand. */
function remainingOf(explained: GroupExplained, chances: Chances) {
  const { group, result } = explained;
  if (result === undefined || chances !== 'told') return [];
  const names = namesLeft(result, ratioReadOf(explained)).map(({ ratio }) => ratio);
  return [{ about: valveSubject(group), names }];
}

/** Every set-up put in order. */
export function ratioKnown(evidence: Evidence): Pick<RatioRead, 'reads' | 'known'> {
  const reads = setUpsRead(evidence);
  const nominals = nominalsOf(evidence);
  const known = reads.map((read) => knownOf(evidence, read, reads, nominals));
  // A bucket has no ratio that could come out otherwise.
  if (evidence.engine.gear === 'bucket') return { reads, known };
  return { reads, known: withSpringsAgainst(withPoor(withDiffering(evidence, known))) };
}

/** The inference once for every arm on every valve; `swaps`: what the swaps on record decided. */
export function ratioRead(
  evidence: Evidence,
  { reads, known } = ratioKnown(evidence),
  swaps: readonly SwapTold[] = [],
): RatioRead {
  // A bucket moves one to one with its lobe: there is no ratio to weigh.
  if (evidence.engine.gear === 'bucket') return { reads, known, explained: [] };
  const nominals = nominalsOf(evidence);
  const groups = groupsOf(evidence, reads, {
    within: DEFAULT_ASSUMPTIONS.lobesDiffer * IN,
    swaps,
    ...putAside(known),
    poor: new Set(
      known.flatMap(({ read, poor, begun }) => (poor === undefined && begun !== true ? [] : read)),
    ),
  });
  const explained = groups.map((group) => explainGroup(evidence, group, known, nominals));
  return { reads, known, explained };
}

/** A set-up of which no ratio is told. */
const withoutRatio = ({ read, counted }: SetUpKnown): SetUpKnown => ({
  read,
  counted,
  questions: [],
  lacks: [],
  doubts: [],
});

/**
 * The ratio of every arm on every valve that was read: what it is, against what it is held to be, and what to ask.
 * `parts`: what was measured of loose arms. `stop`: why nobody turns it; while
 * there is any, no sentence asks for a reading.
 */
export function ratioPart(
  evidence: Evidence,
  read: RatioRead,
  parts: readonly PartDetail[],
  stop: readonly StopReason[],
): RatioSaid {
  const stopped = stop.length > 0;
  const { reads, known, explained } = read;
  if (evidence.engine.gear === 'bucket') {
    const said = bucketLifts(evidence, reads);
    const detail = known.map((each) => {
      const ids = new Set(each.read.standing.map(({ id }) => id));
      const questions = said.questions.filter(({ restsOn }) => restsOn.some((id) => ids.has(id)));
      return setUpDetail(evidence, { ...withoutRatio(each), questions }, reads);
    });
    return { ...said, stop: [], notToRun: [], detail, explanations: [], remaining: [] };
  }
  const handOf = (each: GroupExplained) => armsInHand(evidence, each, parts);
  const chances = new Map(explained.map((each) => [each, chancesOf(each, handOf(each))]));
  const of = (each: GroupExplained): Chances => chances.get(each) ?? 'none';
  const judged = (each: GroupExplained) =>
    judgedGroup(each, {
      stopped,
      stamp: stampAsked(evidence, each),
      sold: (told) => soldOtherwiseSaid(evidence, each, told),
      ...defined({ inHand: handOf(each) }),
    });
  const cards = cardJudged(evidence, explained);
  const lobes = known.flatMap((each) =>
    lobeAgainstCard(evidence, each, known, stopped, cardSaid(explained, placeOf(each.read.setUp))),
  );
  const deflections = explained.map((each) => deflection(evidence, each));
  const judgements = [
    ...explained.filter(({ given }) => given !== undefined).flatMap(judged),
    ...deflections.flatMap((each) => each.judgements),
    ...[...cards, ...lobes].map(({ judgement }) => judgement).sort(byId),
  ];
  return {
    quantities: [
      ...known.flatMap(setUpQuantities),
      ...explained.flatMap((each) => armRatio(each, of(each))),
      ...deflections.flatMap((each) => each.quantities),
      ...cardQuantities(evidence),
    ],
    judgements,
    questions: [...ratioQuestions(evidence, read), ...deflections.flatMap((each) => each.questions)],
    stop: [],
    headlines: [
      ...ratioHeadlines(evidence, explained, judgements),
      ...lashHeadlines(explained),
      ...lobeHeadlines(lobes),
      ...cardHeadlines(evidence, explained, cards),
    ],
    notToRun: [
      ...lobesOff(lobes)
        .filter((off) => isDown(off) && !cardIsOther(explained, placeOf(off)) && !isStopped(off, stop))
        .map(lobeNotToRun),
      ...lobesOfWhom(lobes)
        .filter((off) => isDown(off) && !isStopped(off, stop))
        .map((off) => whoseNotToRun(off, 'ratio')),
    ],
    detail: known.map((each) => setUpDetail(evidence, each, reads)),
    explanations: explained.flatMap((each) => explanationOf(each, of(each), stopped)),
    remaining: explained.flatMap((each) => remainingOf(each, of(each))),
  };
}
