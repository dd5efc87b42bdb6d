import { defined } from '../../../../shared/defined.ts';
import type { AssessedQuantity, AssessedQuestion, Headline } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import type { PartSaid } from '../common/part-said.ts';
import type { Evidence } from '../evidence.ts';
import { againstBuild } from './against-build.ts';
import { bottomed } from './bottomed.ts';
import type { SetEvidence } from './evidence.ts';
import { BUILD, type KeptSet, lastKept } from './kept.ts';
import { keptPreloads, lifterQuestions, travelSaid } from './lifters.ts';
import { type Band, bandIn, isOverBand, overBandQuestions } from './over-band.ts';
import { rodQuestions } from './rods.ts';
import { preloadWithin, setSaid } from './said.ts';
import { heatOfSum } from './sum-heat.ts';
import { threadQuestion, threadQuestions } from './threads.ts';
import { NOT_MADE, type TurnMade, turnMade } from './turn-made.ts';
import { turnsSaid } from './turns-said.ts';
import { unlikelyQuestions } from './unlikely.ts';

export interface WorkingsDetail {
  /** Questions about adjusters. */
  readonly questionIds: readonly string[];
  /** The sum whose turn somebody at the engine makes next; none where it was made, goes too far or is doubted. */
  readonly turnToMake?: string;
}

const KINDS = ['preload', 'turns', 'pushrod', 'stand', 'heat', 'follower'] as const;
const STEPS = {
  preload: 'adjuster',
  turns: 'adjuster',
  pushrod: 'geometry',
  stand: 'geometry',
  heat: 'adjuster',
  follower: 'geometry',
} as const;

const NAMED = {
  preload: 'these turns',
  turns: 'these turns',
  pushrod: 'this length',
  stand: 'this height',
  heat: 'this lash',
  follower: 'this ratio',
} as const;

const TURN = 2 * Math.PI;

/** What a page has a column for: its name and its value. */
function figureOf(set: SetEvidence): Pick<AssessedQuantity, 'name' | 'dimension' | 'value'> {
  switch (set.of) {
    case 'preload':
      return { name: 'Preload of the lifter', dimension: 'length', value: set.preload };
    case 'turns':
      return { name: 'Turn of the adjuster, tightening', dimension: 'angle', value: set.turns * TURN };
    case 'pushrod':
      return { name: 'Pushrod length', dimension: 'length', value: set.length };
    case 'stand':
      return { name: 'Stand to be raised', dimension: 'length', value: set.shim };
    case 'heat':
      return { name: 'Lash on the cold engine', dimension: 'length', value: set.cold };
    case 'follower':
      return { name: 'Follower’s ratio by its arms, valve shut', dimension: 'ratio', value: set.shut.ratio };
  }
}

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
}

/** A turn of one thread is another on the next: none is told while it is open which is on it. */
const threadAsked = (set: SetEvidence, evidence: Evidence): AssessedQuestion[] =>
  set.of === 'turns' || set.of === 'preload'
    ? [threadQuestion(set.mount, evidence)].flatMap((each) => each ?? [])
    : [];

const isAskedFor = ({ over }: SumSaid): boolean => over.some(({ answered }) => answered?.found === false);

function sumSaid(sum: SumSaid): string {
  const { set } = sum.kept;
  return set.of === 'turns'
    ? turnsSaid(set, sum.made, { band: sum.band, asked: isAskedFor(sum) })
    : setSaid(set);
}

function isToMake(sum: SumSaid): boolean {
  const { set } = sum.kept;
  if (set.of !== 'turns' || openOf(sum) !== undefined) return false;
  if ((set.preload ?? 0) < 0) return false;
  return isOverBand(set, sum.band)
    ? isAskedFor(sum)
    : sum.made.made.length === 0 || sum.made.waiting.length > 0;
}

const openOf = ({ questions, waits }: SumSaid): AssessedQuestion | undefined =>
  [...questions, ...waits].find(inDoubt);

/** Of a sum that hardly can be nothing is told but the doubt. */
function told(sum: SumSaid): string {
  const open = openOf(sum);
  if (open === undefined) return sumSaid(sum);
  return open.answered?.found === true
    ? 'A figure of this sum was entered wrong: it is kept again with the right one.'
    : `Nothing is told of ${NAMED[sum.kept.set.of]} yet. ${open.ask}`;
}

const quantityOf = (sum: SumSaid): AssessedQuantity => ofSet(sum.kept.set, openOf(sum) !== undefined);

const ofSet = (set: SetEvidence, doubted: boolean): AssessedQuantity => ({
  id: `working:${set.of}`,
  ...figureOf(set),
  ...(set.of === 'preload'
    ? { low: set.preload - preloadWithin(set), high: set.preload + preloadWithin(set) }
    : {}),
  ...(set.of === 'follower' ? { low: set.shut.low, high: set.shut.high } : {}),
  about: BUILD,
  basis: 'calculated',
  conditions:
    set.of === 'preload' || set.of === 'turns' ? [`thread ${set.thread}`, `ratio ${set.ratio}`] : [],
  lacks: doubted ? ['whether its figures are right'] : [],
  restsOn: [],
});

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
 * @returns a sentence and a figure for each kind, what their threads ask, and the stop
 *
 * Validity: as the computations that they were kept of.
 * Source: as those; that nobody turns an engine whose plunger is on its bottom by common practice, no published source.
 */
export function workingsPart(evidence: Evidence): PartSaid<WorkingsDetail> {
  const preloads = keptPreloads(evidence);
  const turns = lastKept(evidence, 'turns');
  const band = bandIn(preloads);
  const travel = travelSaid(evidence);
  const made = turns === undefined ? NOT_MADE : turnMade(turns, evidence);
  const sums = KINDS.flatMap((name): SumSaid[] => {
    const last: KeptSet | undefined = name === 'preload' ? preloads.at(-1) : lastKept(evidence, name);
    if (last === undefined) return [];
    const own = name === 'turns' ? made : NOT_MADE;
    return [
      {
        kept: last,
        questions: [
          ...unlikelyQuestions(last, travel, evidence),
          ...againstBuild(last, evidence),
          ...own.against,
          ...(last.set.of === 'turns' ? heatOfSum({ ...last, set: last.set }, own, evidence) : []),
        ],
        waits: [...own.twice, ...threadAsked(last.set, evidence)],
        over: overBandQuestions(last, band, travel, evidence),
        band,
        made: own,
      },
    ];
  });
  const { questions, stop } = bottomed(preloads, evidence);
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
      ...defined({ turnToMake: sums.find(isToMake)?.kept.id }),
    },
  };
}
