import { once } from '../../common/once.ts';
import { lowerFirst } from '../../common/said.ts';
import { doubtsOf } from '../asked/conditions.ts';
import { ABOUT_TURNS } from '../asked/counted.ts';
import { isSaid, type RatioLack } from '../read/lack.ts';
import type { GroupExplained } from './explain.ts';
import type { SetUpKnown } from './known.ts';

/** Passes of the valve were read, those put aside too. */
export const wasRead = ({ read }: SetUpKnown): boolean =>
  read.valve.used.length > 0 || read.valve.aside.length > 0;

/** Only what was read on a light spring, or may have been, is ever set against a mark. */
function candidates(known: readonly SetUpKnown[]): SetUpKnown[] {
  return known.filter((each) => wasRead(each) && each.read.setUp.spring !== 'running');
}

/** A pass of this very set-up is entered again or struck out. */
const isPassAgain = (lack: RatioLack): boolean => lack.code === 'enter-again' && lack.passes.length > 0;

/** An entry is looked at, or something asked about it answered: nothing is read again for it. */
const isLookedAt = (lack: RatioLack): boolean =>
  lack.code === 'read-back-wrong' || lack.code === 'answer' || isPassAgain(lack);

/** What takes a reading weighs more than any number of things that only have to be said or looked at. */
const weightOf = ({ lacks }: SetUpKnown): number =>
  lacks.reduce((sum, lack) => sum + (isSaid(lack) || isLookedAt(lack) ? 1 : 100), 0);

const restingAmong = once((known: readonly SetUpKnown[]): SetUpKnown | undefined =>
  candidates(known).reduce<SetUpKnown | undefined>(
    (best, each) => (best === undefined || weightOf(each) <= weightOf(best) ? each : best),
    undefined,
  ),
);

/**
 * The set-up that a word rests on: the one that lacks least, of those the newest. What was read already goes before
 * what would have to be read again.
 */
export const restingOn = ({ known }: Pick<GroupExplained, 'known'>): SetUpKnown | undefined =>
  restingAmong(known);

/** Nothing that was read can stand against a mark: the reading that could. */
const lightSpringFirst = ({ known }: GroupExplained): RatioLack => ({
  code: 'light-spring-first',
  sinks: known.some(({ lacks }) => lacks.some(({ code }) => code === 'sinking')),
});

/** Where only the running spring was read, and read well: its ratio has a name of its own, and meets no mark. */
export function runningAlone(explained: GroupExplained): SetUpKnown | undefined {
  if (restingOn(explained) !== undefined) return undefined;
  return explained.known.findLast(
    ({ read, result, lacks }) =>
      read.setUp.spring === 'running' &&
      read.setUp.lifter !== 'hydraulic' &&
      result !== undefined &&
      lacks.length === 0,
  );
}

/** Turns before springs: passes to enter again, and what is asked of the count, where only the running spring was read. */
const countFirst = ({ known }: GroupExplained): RatioLack[] =>
  known.flatMap(({ read, questions, lacks }) => [
    ...lacks.filter(isPassAgain),
    ...doubtsOf(
      read,
      questions.filter(({ code }) => ABOUT_TURNS.has(code)),
    ),
  ]);

/** What must be known or done before anything stands against a mark or a name. */
export function lacksOfGroup(explained: GroupExplained): readonly RatioLack[] {
  const resting = restingOn(explained);
  if (resting === undefined) return [...countFirst(explained), lightSpringFirst(explained)];
  const { refused } = explained;
  if (refused === undefined) return resting.lacks;
  return [...resting.lacks, { code: 'not-weighed', why: lowerFirst(refused) }];
}
