import { ADJUSTER_WORDS } from '../../lash/adjuster-words.ts';
import { LOCKING } from '../../noise/causes.ts';
import { effectOf } from '../../noise/effects.ts';
import type { NotSet } from '../common/not-set.ts';
import { placeOf } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { LashDetail } from '../lash/detail.ts';
import { lastSaid, noisyValve } from './answers.ts';
import { NOT_RUN, whySaid } from './damage.ts';
import { lockTold, OF_LOCK } from './lock-told.ts';

/** Low oil is no part of one valve. */
const OF_VALVE = NOT_RUN.filter(({ question }) => question !== 'noise-oil');

/** What was told of its lock, or of a part that is worn, as a clause with what goes first. */
function firstWhy(evidence: Evidence, lash: LashDetail, at: string): string | undefined {
  const worn = OF_VALVE.find(({ question, answer }) => lastSaid(question, evidence)?.answer === answer);
  if (worn !== undefined)
    return `${whySaid(worn, evidence)} at ${at}: that is put right first, and the gap is set last`;
  const { aside } = lockTold(evidence, { lash });
  const lock = OF_LOCK.some((question) => {
    const answer = lastSaid(question, evidence)?.answer;
    return (
      answer !== undefined &&
      !aside.includes(question) &&
      effectOf(question, answer).for.some((each) => LOCKING.some((cause) => cause === each))
    );
  });
  return lock ? `what was found of the lock of ${at} is put right first, and the gap is set last` : undefined;
}

/** Valves found, and not set since, of whose lock or parts something was told that is put right before anything is set. */
export function noiseNotSet(evidence: Evidence, lash: LashDetail): NotSet[] {
  const place = noisyValve(evidence);
  return lash.valves.flatMap((valve) => {
    if (place !== undefined && placeOf(place) !== placeOf(valve)) return [];
    if (valve.lines.at(-1)?.moment !== 'found') return [];
    const why = firstWhy(evidence, lash, placeOf(valve));
    const first = `what was found of its ${ADJUSTER_WORDS[lash.adjuster].part}, put right`;
    return why === undefined ? [] : [{ cylinder: valve.cylinder, valve: valve.valve, why, first }];
  });
}
