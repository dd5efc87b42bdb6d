import type { Working } from '../../records/workings/workings.ts';
import type { CallContext } from '../context.ts';

/** The headline that says what a kept computation comes to, where the assessment has one. */
const TOLD: Readonly<Record<string, string>> = {
  adjuster: 'headline:working:turns',
  'lifter-preload': 'headline:working:preload',
  'lash-hot-cold': 'headline:working:heat',
  'pushrod-length': 'headline:working:pushrod',
  'stand-height': 'headline:working:stand',
  'follower-ratio': 'headline:working:follower',
};

/** Told among what was found already: the figures of the cam among them, whichever lobe they are of. */
const IN_FOUND: ReadonlySet<string> = new Set([...Object.keys(TOLD), 'centreline', 'top-dead-centre']);

const ONLY_WORKED_OUT = 'Only worked out, as was answered: no adjuster stands so.';

/** What the last one kept of a computation comes to, in the words of the assessment. */
export function workingTold({ assessment }: CallContext, { id, computation }: Working): string | undefined {
  if (assessment.details.workings.onlyWorkedOut?.includes(id)) return ONLY_WORKED_OUT;
  return assessment.headlines.find((each) => each.id === TOLD[computation])?.sentence;
}

/** Shown instead of what came out, before why. */
export const NOT_HELD = 'What came out of it is not shown.';

const outdatedOf = ({ assessment }: CallContext, { id }: Working) =>
  assessment.details.workings.outdated.find((each) => each.id === id);

/** Why what came out of it is not shown, where the build has gone past its figures, or something is looked at first. */
export function outdatedSaid(context: CallContext, working: Working): string | undefined {
  const found = outdatedOf(context, working);
  return found?.waits === true ? found.sentence : undefined;
}

/** Said beside figures that may be of another arm or lash. */
export function besideSaid(context: CallContext, working: Working): string | undefined {
  const found = outdatedOf(context, working);
  return found?.waits === false ? found.sentence : undefined;
}

export const isInFound = ({ computation }: Working): boolean => IN_FOUND.has(computation);
