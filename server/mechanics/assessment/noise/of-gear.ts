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

/** Parts that this engine has none of. A hydraulic rocker on a pedestal or shaft has no adjuster whose nut could move. */
function without({ engine: { gear = 'pushrod', mounting, lifter } }: Pick<Evidence, 'engine'>): Without[] {
  const onStud = mounting === undefined || mounting === 'stud';
  const fixed = !onStud && lifter?.startsWith('hydraulic') === true;
  return [...WITHOUT[gear], ...(gear !== 'pushrod' || onStud ? [] : [NO_STUD]), ...(fixed ? [NO_NUT] : [])];
}

/** Causes that this engine can have, in the order in which a desk looks. */
export function causesOf(evidence: Pick<Evidence, 'engine'>): CauseName[] {
  const none = without(evidence).flatMap(({ causes }) => causes);
  return CAUSE_NAMES.filter((cause) => !none.includes(cause));
}

/** Whether the engine has the part that is asked about. */
export function isAskedOf(evidence: Pick<Evidence, 'engine'>): (question: NoiseQuestion) => boolean {
  const none = without(evidence).flatMap(({ questions }) => questions);
  return (question) => !none.includes(question);
}
