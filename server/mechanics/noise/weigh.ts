import { CAUSE_NAMES, type CauseName } from './causes.ts';
import type { Effect } from './effects.ts';

/** Something that was answered or read, with what it speaks for and against. */
export interface Fact extends Effect {
  /** One fact counts once, whichever way it came to be known. */
  readonly key: string;
  readonly text: string;
  /** Ids of entries. */
  readonly restsOn: readonly string[];
}

/** A cause with all that speaks for it and against it: never a verdict. */
export interface Candidate {
  readonly cause: CauseName;
  readonly for: readonly Fact[];
  readonly against: readonly Fact[];
  /** It was itself seen bad. */
  readonly seen: boolean;
}

/** How the candidates are in order, told wherever they are listed. */
export const HOW_ORDERED =
  'In order: what was itself seen bad, then what has least against it, then what has most for it, then the order in which a desk looks. Each answer and each reading counts one: no weights and no chances. None of it is a verdict.';

const byOrder = (a: Candidate, b: Candidate): number =>
  Number(b.seen) - Number(a.seen) || a.against.length - b.against.length || b.for.length - a.for.length;

/**
 * The causes in the order of what is known: seen bad first, then least against, then most for; none is ever dropped.
 *
 * @param facts each counted once
 * @param causes those that the engine can have
 * @returns every cause with its facts
 *
 * Validity: counts, not chances; facts are taken as independent of each other, which they are not.
 * Source: common practice, no published source.
 */
export const weigh = (facts: readonly Fact[], causes: readonly CauseName[] = CAUSE_NAMES): Candidate[] =>
  causes
    .map((cause) => ({
      cause,
      for: facts.filter((fact) => fact.for.includes(cause)),
      against: facts.filter((fact) => fact.against.includes(cause)),
      seen: facts.some((fact) => fact.shows?.includes(cause) === true),
    }))
    .toSorted(byOrder);

/** Those that have least against them, and those that were seen bad: what is still to be told apart. */
export function remaining(candidates: readonly Candidate[]): Candidate[] {
  const least = Math.min(...candidates.map(({ against }) => against.length));
  return candidates.filter(({ against, seen }) => seen || against.length === least);
}

/** So many facts behind the first of them, a cause is not asked after before something is done about the first. */
const FAR_BEHIND = 3;

/** Of those that remain the ones that are still near the first: what is asked next tells these apart. */
export function contenders(left: readonly Candidate[]): Candidate[] {
  const most = Math.max(0, ...left.map((each) => each.for.length));
  return left.filter((each) => each.seen || each.for.length > most - FAR_BEHIND);
}

const signOf = (effect: Effect, cause: CauseName): number =>
  effect.for.includes(cause) ? 1 : effect.against.includes(cause) ? -1 : 0;

/** Whether one of the effects that a check may have would part two causes. */
export const parts = (effects: readonly Effect[], a: CauseName, b: CauseName): boolean =>
  effects.some((effect) => signOf(effect, a) !== signOf(effect, b));

/** How many pairs of these causes one effect parts. */
function pairsOf(effect: Effect, causes: readonly CauseName[]): number {
  const signs = causes.map((cause) => signOf(effect, cause));
  return signs.reduce(
    (sum, sign, index) => sum + signs.slice(index + 1).filter((other) => other !== sign).length,
    0,
  );
}

/** How many pairs of these causes a check parts, in the mean of the effects that it may have, each taken alike. */
export const pairsParted = (effects: readonly Effect[], causes: readonly CauseName[]): number =>
  effects.reduce((sum, effect) => sum + pairsOf(effect, causes), 0) / Math.max(1, effects.length);
