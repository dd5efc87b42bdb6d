import { doubtsOf, READ_BACK_WRONG } from './conditions.ts';
import { ABOUT_TURNS } from './counted.ts';
import type { GroupExplained } from './explain.ts';
import type { SetUpKnown } from './known.ts';
import { SINKING } from './sinking.ts';

/** Passes of the valve were read, those put aside too. */
export const wasRead = ({ read }: SetUpKnown): boolean =>
  read.valve.used.length > 0 || read.valve.aside.length > 0;

/** Only what was read on a light spring, or may have been, is ever set against a mark. */
function candidates(known: readonly SetUpKnown[]): SetUpKnown[] {
  return known.filter((each) => wasRead(each) && each.read.setUp.spring !== 'running');
}

/** States that the caller knows; everything else takes a reading. */
export const isSaid = (lack: string): boolean =>
  /^(which spring|which lifter|which arm|whether the lash)/.test(lack);

const ENTERED_AGAIN = /^pass(es)? .* entered again or struck out/;

/** An entry is looked at, or something asked about it answered: nothing is read again for it. */
const isLookedAt = (lack: string): boolean =>
  lack === READ_BACK_WRONG || lack.startsWith('the answer to ') || ENTERED_AGAIN.test(lack);

/** What takes a reading weighs more than any number of things that only have to be said or looked at. */
const weightOf = ({ lacks }: SetUpKnown): number =>
  lacks.reduce((sum, lack) => sum + (isSaid(lack) || isLookedAt(lack) ? 1 : 100), 0);

/**
 * The set-up that a word rests on: the one that lacks least, of those the newest. What was read already goes before
 * what would have to be read again.
 */
export function restingOn({ known }: Pick<GroupExplained, 'known'>): SetUpKnown | undefined {
  return candidates(known).reduce<SetUpKnown | undefined>(
    (best, each) => (best === undefined || weightOf(each) <= weightOf(best) ? each : best),
    undefined,
  );
}

const LIGHT_SPRING_FIRST = 'a reading on a light spring with a solid lifter, at zero lash';

/** Nothing that was read can stand against a mark: the reading that could, and why where the passes sink. */
export const lightSpringFirst = ({ known }: GroupExplained): string =>
  known.some(({ lacks }) => lacks.includes(SINKING))
    ? `${LIGHT_SPRING_FIRST}: every pass is under the last, as with a lifter that sinks`
    : LIGHT_SPRING_FIRST;

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

export const isLightSpringFirst = (lack: string): boolean => lack.startsWith(LIGHT_SPRING_FIRST);

/** Turns before springs: what stands apart or is asked of the count, where only the running spring was read. */
const countFirst = ({ known }: GroupExplained): string[] =>
  known.flatMap(({ read, questions, lacks }) => [
    ...lacks.filter((lack) => ENTERED_AGAIN.test(lack)),
    ...doubtsOf(
      read,
      questions.filter(({ code }) => ABOUT_TURNS.has(code)),
    ),
  ]);

/** What must be known or done before anything stands against a mark or a name. */
export function lacksOfGroup(explained: GroupExplained): readonly string[] {
  const resting = restingOn(explained);
  if (resting === undefined) return [...countFirst(explained), lightSpringFirst(explained)];
  const { refused } = explained;
  return refused === undefined ? resting.lacks : [...resting.lacks, refused.replace(/^T/, 't')];
}
