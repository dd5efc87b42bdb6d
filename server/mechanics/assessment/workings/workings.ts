import { defined } from '../../../../shared/defined.ts';
import type { AssessedQuantity, AssessedQuestion, Headline } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { BUILD, type KeptSet, lastKept, STEPS } from '../common/kept.ts';
import type { NotSet } from '../common/not-set.ts';
import type { PartSaid } from '../common/part-said.ts';
import { sidesSwapped } from '../common/sides-swapped.ts';
import type { SetEvidence } from '../evidence/kept-sums.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import { againstBuild } from './against-build.ts';
import { bottomed, onlyWorkedOut } from './bottomed.ts';
import { ofSet } from './figures.ts';
import { heatSumsQuestion } from './heat-sums.ts';
import { keptPreloads, lifterQuestions, travelSaid } from './lifters.ts';
import { type Outdated, outdatedOf } from './outdated.ts';
import { type Band, bandIn, bandQuestions, isOverBand } from './over-band.ts';
import { shutBy } from './past-gap.ts';
import { rodQuestions } from './rods.ts';
import { setSaid } from './said.ts';
import { heatOfSum } from './sum-heat.ts';
import { threadQuestion, threadQuestions } from './threads.ts';
import { sumsTooFar, tooFarSaid } from './too-far.ts';
import { isHeld, NOT_MADE, type TurnMade, turnMade, withoutNotSet } from './turn-made.ts';
import { isAsWanted, isFromNoGap, turnsSaid } from './turns-said.ts';
import { unlikelyQuestions } from './unlikely.ts';

export interface WorkingsDetail {
  /** Questions about adjusters. */
  readonly questionIds: readonly string[];
  /** The sum whose turn somebody at the engine makes next; none where it was made, goes too far or is doubted. */
  readonly turnToMake?: string;
  /** Kept computations that were made with other figures than the build has now. */
  readonly outdated: readonly Outdated[];
  /** Sums that no adjuster was turned by, as was answered, where there are any. */
  readonly onlyWorkedOut?: readonly string[];
}

const KINDS = ['preload', 'turns', 'pushrod', 'stand', 'heat', 'follower'] as const;
const NAMED = {
  preload: 'these turns',
  turns: 'these turns',
  pushrod: 'this length',
  stand: 'this height',
  heat: 'this lash',
  follower: 'this ratio',
} as const;

/** A sum and what is asked of its figures. */
interface SumSaid {
  readonly kept: KeptSet;
  /** What it is withheld for. */
  readonly questions: readonly AssessedQuestion[];
  /** What it is withheld for as well, and the lash log asks. */
  readonly waits: readonly AssessedQuestion[];
  /** What is asked beside it. */
  readonly over: readonly AssessedQuestion[];
  readonly made: TurnMade;
  /** What a plunger should be pressed. */
  readonly band: Band;
  /** It was answered that no adjuster was turned so far. */
  readonly workedOut: boolean;
  /** Turns that hold a valve open, in a sentence. */
  readonly tooFar?: string;
  /** Valves of the log whose gap is less than is closed; left out where the log has no gap. */
  readonly shut?: readonly ValvePlace[];
  /** The lashes of the two sides stand for one another: nothing is turned by them before they are put right. */
  readonly doubt?: string;
}

/** A turn of one thread is another on the next: none is told while it is open which is on it. */
const threadAsked = (set: SetEvidence, evidence: Evidence): AssessedQuestion[] =>
  set.of === 'turns' || set.of === 'preload'
    ? [threadQuestion(set.mount, evidence)].flatMap((each) => each ?? [])
    : [];

const isAskedFor = ({ over }: SumSaid): boolean => over.some(({ answered }) => answered?.found === false);

function sumSaid(sum: SumSaid): string {
  const { set } = sum.kept;
  if (sum.workedOut) return 'These turns were only worked out, as was answered: no adjuster stands so.';
  if (sum.tooFar !== undefined) return sum.tooFar;
  return set.of === 'turns'
    ? turnsSaid(set, sum.made, { band: sum.band, asked: isAskedFor(sum), ...defined({ shut: sum.shut }) })
    : setSaid(set);
}

function isToMake(sum: SumSaid): boolean {
  const { set } = sum.kept;
  if (set.of !== 'turns' || sum.tooFar !== undefined || openOf(sum) !== undefined) return false;
  if ((set.preload ?? 0) < 0 || isFromNoGap(set) || isAsWanted(set) || sum.doubt !== undefined) return false;
  return isOverBand(set, sum.band)
    ? isAskedFor(sum)
    : sum.made.waiting.length > 0 || (sum.made.made.length === 0 && sum.made.notSet.length === 0);
}

const openOf = ({ questions, waits }: SumSaid): AssessedQuestion | undefined =>
  [...questions, ...waits].find(inDoubt);

/** Of a sum that hardly can be nothing is told but the doubt. */
function told(sum: SumSaid): string {
  const open = openOf(sum);
  if (open === undefined)
    return sum.doubt === undefined
      ? sumSaid(sum)
      : `Nothing is told of ${NAMED[sum.kept.set.of]} yet. ${sum.doubt}`;
  return open.answered?.found === true
    ? 'A figure of this sum was entered wrong, as was answered: it is still to be kept again with the right one.'
    : `Nothing is told of ${NAMED[sum.kept.set.of]} yet. ${open.ask}`;
}

const quantityOf = (sum: SumSaid): AssessedQuantity =>
  ofSet(sum.kept.set, openOf(sum) !== undefined || sum.doubt !== undefined || isHeld(sum.made));

const headlineOf = (sum: SumSaid): Headline => ({
  id: `headline:working:${sum.kept.set.of}`,
  about: BUILD,
  step: STEPS[sum.kept.set.of],
  sentence: told(sum),
  quantityId: `working:${sum.kept.set.of}`,
});

/**
 * What was worked out and kept of adjusters, pushrods and stands, each in a sentence; a plunger past its bottom stops it.
 *
 * @param evidence everything on the record, in SI; of several sums of one kind the one that was kept last counts
 * @param notSet valves that nobody sets yet: no turn is told of them
 * @returns a sentence and a figure for each kind, what their threads ask, and the stop
 *
 * Validity: as the computations that they were kept of.
 * Source: as those; that nobody turns an engine whose plunger is on its bottom by common practice, no published source.
 */
export function workingsPart(evidence: Evidence, notSet: readonly NotSet[] = []): PartSaid<WorkingsDetail> {
  const preloads = keptPreloads(evidence);
  const turns = lastKept(evidence, 'turns');
  const band = bandIn(preloads);
  const travel = travelSaid(evidence);
  const tooFar = turns === undefined ? undefined : tooFarSaid(turns, band, evidence);
  const made = turns === undefined ? NOT_MADE : withoutNotSet(turnMade(turns, evidence), turns.set, notSet);
  const allTooFar = sumsTooFar(evidence);
  const workedOut = new Set(onlyWorkedOut(allTooFar.flat(), evidence).map(({ id }) => id));
  const sides = sidesSwapped(evidence);
  const sums = KINDS.flatMap((name): SumSaid[] => {
    const last: KeptSet | undefined = name === 'preload' ? preloads.at(-1) : lastKept(evidence, name);
    if (last === undefined) return [];
    const own = name === 'turns' ? made : NOT_MADE;
    return [
      {
        kept: last,
        questions: [
          ...unlikelyQuestions(last, travel, evidence),
          ...againstBuild(last, own, evidence),
          ...own.against,
          ...(name === 'heat' ? heatSumsQuestion(evidence) : []),
          ...(last.set.of === 'turns' ? heatOfSum({ ...last, set: last.set }, own, evidence) : []),
        ],
        waits: [
          ...own.twice,
          ...threadAsked(last.set, evidence),
          ...(name === 'turns' ? lifterQuestions(evidence) : []),
        ],
        over: name === 'turns' && tooFar !== undefined ? [] : bandQuestions(last, band, travel, evidence),
        band,
        workedOut: last.id !== undefined && workedOut.has(last.id),
        ...(name === 'turns' && turns !== undefined
          ? defined({
              tooFar,
              shut: shutBy(turns, evidence),
              // A gap of one side against the card’s of the other is no gap to turn by.
              doubt: sides?.holds === true && turns.set.lashFound !== undefined ? sides.said : undefined,
            })
          : {}),
        made: own,
      },
    ];
  });
  const { questions, stop } = bottomed(allTooFar, evidence);
  const aside = evidence.workings.flatMap(({ id, onlyWorkedOut }) => (onlyWorkedOut === true ? [id] : []));
  const all = [
    ...questions,
    ...sums.flatMap((sum) => [...sum.questions, ...sum.over]),
    ...lifterQuestions(evidence),
    ...threadQuestions(evidence),
    ...rodQuestions(evidence),
  ];
  return {
    quantities: sums.map(quantityOf),
    judgements: [],
    questions: all,
    stop,
    headlines: sums.map(headlineOf),
    detail: {
      questionIds: [...all, ...made.twice].map(({ id }) => id),
      outdated: outdatedOf(evidence, notSet),
      ...(aside.length === 0 ? {} : { onlyWorkedOut: aside }),
      ...defined({ turnToMake: sums.find(isToMake)?.kept.id }),
    },
  };
}
