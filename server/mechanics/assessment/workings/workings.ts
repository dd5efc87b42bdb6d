import type { AssessedQuantity, Headline } from '../assessment.ts';
import type { PartSaid } from '../common/part-said.ts';
import type { Evidence } from '../evidence.ts';
import { bottomed } from './bottomed.ts';
import type { SetEvidence } from './evidence.ts';
import { BUILD, type KeptSet, lastKept } from './kept.ts';
import { keptPreload, lifterQuestions } from './lifters.ts';
import { preloadWithin, setSaid } from './said.ts';
import { threadQuestions } from './threads.ts';

export interface WorkingsDetail {
  /** Questions about adjusters. */
  readonly questionIds: readonly string[];
}

const KINDS = ['preload', 'turns', 'pushrod', 'stand'] as const;
const STEPS = { preload: 'adjuster', turns: 'adjuster', pushrod: 'geometry', stand: 'geometry' } as const;

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
  }
}

const quantityOf = ({ set }: KeptSet): AssessedQuantity => ({
  id: `working:${set.of}`,
  ...figureOf(set),
  ...(set.of === 'preload'
    ? { low: set.preload - preloadWithin(set), high: set.preload + preloadWithin(set) }
    : {}),
  about: BUILD,
  basis: 'calculated',
  conditions:
    set.of === 'preload' || set.of === 'turns' ? [`thread ${set.thread}`, `ratio ${set.ratio}`] : [],
  lacks: [],
  restsOn: [],
});

const headlineOf = ({ set }: KeptSet): Headline => ({
  id: `headline:working:${set.of}`,
  about: BUILD,
  step: STEPS[set.of],
  sentence: setSaid(set),
  quantityId: `working:${set.of}`,
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
  const kept = KINDS.flatMap((name): KeptSet[] => {
    const last: KeptSet | undefined = name === 'preload' ? keptPreload(evidence) : lastKept(evidence, name);
    return last === undefined ? [] : [last];
  });
  const { questions, stop } = bottomed(keptPreload(evidence), evidence.answers);
  const all = [...questions, ...lifterQuestions(evidence), ...threadQuestions(evidence)];
  return {
    quantities: kept.map(quantityOf),
    judgements: [],
    questions: all,
    stop,
    headlines: kept.map(headlineOf),
    detail: { questionIds: all.map(({ id }) => id) },
  };
}
