import type { GroupExplained } from './explain.ts';
import type { SetUpKnown } from './known.ts';

const wasRead = ({ read }: SetUpKnown): boolean => read.valve.used.length > 0 || read.valve.aside.length > 0;

/** Only what was read on a light spring, or may have been, is ever set against a mark. */
function candidates(known: readonly SetUpKnown[]): SetUpKnown[] {
  return known.filter((each) => wasRead(each) && each.read.setUp.spring !== 'running');
}

/** The set-up that a word rests on: the one that lacks least, of those the newest. */
export function restingOn({ known }: GroupExplained): SetUpKnown | undefined {
  return candidates(known).reduce<SetUpKnown | undefined>(
    (best, each) => (best === undefined || each.lacks.length <= best.lacks.length ? each : best),
    undefined,
  );
}

export const LIGHT_SPRING_FIRST = 'a reading on a light spring with a solid lifter, at zero lash';

/** What must be known or done before anything stands against a mark or a name. */
export function lacksOfGroup(explained: GroupExplained): readonly string[] {
  const resting = restingOn(explained);
  if (resting === undefined) return [LIGHT_SPRING_FIRST];
  const { refused } = explained;
  return refused === undefined ? resting.lacks : [...resting.lacks, refused];
}
