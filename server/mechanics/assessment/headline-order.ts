import { type Goal, planOf } from '../../../shared/schemas/goals.ts';
import type { Headline, NotToRun, StopReason, Subject } from './assessment.ts';
import { keyOf } from './common/said.ts';
import { decidedOf, type SwapTold } from './common/swap-told.ts';

/** What a swap decided goes before every reading that it was made of. */
const BY_SWAP = -1;

/** What nobody turns or runs goes before what only has to be set or read; of the engine as a whole every one is. */
interface Grave {
  readonly stop: readonly Pick<StopReason, 'about'>[];
  readonly notToRun: readonly Pick<NotToRun, 'about' | 'beside'>[];
}

const graveSubjects = ({ stop, notToRun }: Grave): ReadonlySet<string> =>
  new Set(
    [...stop, ...notToRun.filter(({ beside }) => beside !== true)]
      .map(({ about }): Subject => about)
      .filter(({ of }) => of !== 'build')
      .map(keyOf),
  );

/** Each step keeps its places; in them the gravest of its own goes first. */
function gravestFirst(headlines: readonly Headline[], grave: Grave): Headline[] {
  const subjects = graveSubjects(grave);
  const isGrave = ({ about }: Headline): boolean => subjects.has(keyOf(about));
  const ofStep = (wanted: Headline['step']): readonly Headline[] => {
    const own = headlines.filter(({ step }) => step === wanted);
    return [...own.filter(isGrave), ...own.filter((each) => !isGrave(each))];
  };
  const left = new Map(headlines.map(({ step }) => [step, ofStep(step).values()]));
  return headlines.flatMap(({ step }) => left.get(step)?.next().value ?? []);
}

/** What the call is about is told first, of one step the gravest; the rest follows in the order of the parts. */
export function inOrderOf(
  goal: Goal,
  headlines: readonly Headline[],
  {
    swaps = [],
    ...grave
  }: Grave & { readonly swaps?: readonly (SwapTold & { readonly judgementId: string })[] },
): Headline[] {
  // The last step of a plan is the one that gives the answer; those before it are asked for it.
  const about = planOf(goal).asks.toReversed();
  const decided = new Set(
    swaps.filter((swap) => decidedOf(swap) !== undefined).map(({ judgementId }) => judgementId),
  );
  const rank = ({ step, judgementId }: Headline): number => {
    if (judgementId !== undefined && decided.has(judgementId) && about.some((each) => BY_STEPS.has(each)))
      return BY_SWAP;
    return about.includes(step) ? about.indexOf(step) : about.length;
  };
  return gravestFirst(headlines, grave).toSorted((a, b) => rank(a) - rank(b));
}

/** A call about these is answered by a swap. */
const BY_STEPS: ReadonlySet<string> = new Set(['ratio', 'sheet']);
