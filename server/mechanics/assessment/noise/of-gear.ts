import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import type { NoiseQuestion } from '../../../../shared/schemas/noise.ts';
import type { ValveGear } from '../../../../shared/schemas/words.ts';
import { CAUSE_NAMES, type CauseName } from '../../noise/causes.ts';
import type { Evidence } from '../evidence.ts';

interface Without {
  readonly questions: readonly NoiseQuestion[];
  readonly causes: readonly CauseName[];
}

const NO_STUD: Without = {
  questions: ['noise-set-screw', 'noise-nut-used', 'noise-stud', 'noise-stud-top'],
  causes: ['stud-top', 'stud'],
};
/** Nothing sets the gap of that valve: nobody can have set it again. */
const NOTHING_SET: Without = { questions: ['noise-history'], causes: [] };
const NO_NUT: Without = { questions: ['noise-nut', 'noise-thread'], causes: ['nut-lock', 'stud-thread'] };
const NO_PUSHROD: Without = { questions: ['noise-pushrod'], causes: ['pushrod'] };
/** A finger follower rocks on a ball or a lash adjuster: no bearing carries it. */
const NO_BEARING: Without = { questions: ['noise-trunnion'], causes: ['trunnion'] };
const NO_ARM: Without = { questions: ['noise-roller', 'noise-trunnion'], causes: ['roller', 'trunnion'] };

/** Source: how each valve gear is made, general knowledge from memory, no published source. */
const WITHOUT: Readonly<Record<ValveGear, readonly Without[]>> = {
  pushrod: [],
  bucket: [NO_STUD, NO_NUT, NO_PUSHROD, NO_ARM],
  'finger-follower': [NO_STUD, NO_NUT, NO_PUSHROD, NO_BEARING],
  'cam-rocker': [NO_STUD, NO_PUSHROD],
};

type OfEngine = Pick<Evidence, 'engine'>;

/** Rockers on pushrods whose mounting nobody has said: it is asked before anything that only a stud has. */
export const isMountingOpen = ({ engine: { gear = 'pushrod', mounting } }: OfEngine): boolean =>
  gear === 'pushrod' && mounting === undefined;

/**
 * Parts that this engine has none of. A hydraulic rocker on a shaft has no adjuster whose nut could move, and one on a
 * pedestal has its bolt alone; neither is set again, nor is a hydraulic pivot or bucket.
 */
function without(evidence: OfEngine): Without[] {
  const { gear = 'pushrod', mounting, lifter } = evidence.engine;
  const onStud = mounting === 'stud' || isMountingOpen(evidence);
  const hydraulic = isHydraulicLifter(lifter);
  const fixed = hydraulic && (gear !== 'pushrod' || (mounting !== undefined && mounting !== 'stud'));
  const hasBolt = gear === 'pushrod' && mounting === 'pedestal';
  return [
    ...WITHOUT[gear],
    ...(gear !== 'pushrod' || onStud ? [] : [NO_STUD]),
    ...(fixed ? [NOTHING_SET] : []),
    ...(fixed && !hasBolt ? [NO_NUT] : []),
  ];
}

/** Causes that this engine can have, in the order in which a desk looks. */
export function causesOf(evidence: OfEngine): CauseName[] {
  const none = without(evidence).flatMap(({ causes }) => causes);
  return CAUSE_NAMES.filter((cause) => !none.includes(cause));
}

/** Whether the engine is known to have the part that is asked about. */
export function isAskedOf(evidence: OfEngine): (question: NoiseQuestion) => boolean {
  const held = isMountingOpen(evidence) ? NO_STUD.questions : [];
  const none = [...without(evidence).flatMap(({ questions }) => questions), ...held];
  return (question) => !none.includes(question);
}
