import type { NoiseQuestion } from '../../../../shared/schemas/noise.ts';
import { ADJUSTER_WORDS } from '../../lash/adjuster-words.ts';
import { LOCKING } from '../../noise/causes.ts';
import { effectOf } from '../../noise/effects.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { placeOf, valveSubject } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { LashValveDetail } from '../lash/detail.ts';
import { nutLine } from '../lash/nut-moved.ts';
import { lastSaid, noisyValve } from './answers.ts';
import { hasGrown, type NoiseRecord } from './of-record.ts';

/** What a new lock puts right. */
export const OF_LOCK: readonly NoiseQuestion[] = [
  'noise-set-screw',
  'noise-nut-used',
  'noise-stud-top',
  'noise-thread',
];

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'before',
    label: 'Before it was set again',
    changes: 'It says nothing of the lock that is on it now; it stays on the record.',
  },
  { code: 'since', label: 'Since it was set again', changes: 'It counts beside what the lash log has.' },
];

/** What was told of the lock, of a valve that was set again since and whose nut held while its gap grew. */
export interface LockTold {
  /** Answers that do not count: of the lock before, or nobody has said of which. */
  readonly aside: readonly NoiseQuestion[];
  readonly question?: AssessedQuestion;
}

/** It was found and then set again, grew once more, and its nut had held. */
function heldAndGrew(valve: LashValveDetail, { lash }: Pick<NoiseRecord, 'lash'>): boolean {
  const found = valve.lines.findIndex(({ moment }) => moment === 'found');
  const set = valve.lines.findLastIndex(({ moment }) => moment === 'set');
  return found >= 0 && set > found && hasGrown(valve, lash) && nutLine(valve)?.nut === 'held';
}

/** Answers that speak for the lock, beside a lash log by which it held: asked of which lock they were. */
export function lockTold(evidence: Evidence, record: Pick<NoiseRecord, 'lash'>): LockTold {
  const place = noisyValve(evidence);
  const valve = record.lash.valves.find(
    (each) => (place === undefined || placeOf(place) === placeOf(each)) && heldAndGrew(each, record),
  );
  const told = OF_LOCK.filter((question) => {
    const answer = lastSaid(question, evidence)?.answer;
    return (
      answer !== undefined &&
      effectOf(question, answer).for.some((each) => LOCKING.some((cause) => cause === each))
    );
  });
  if (valve === undefined || told.length === 0) return { aside: [] };
  const { lock } = ADJUSTER_WORDS[record.lash.adjuster];
  const question = asked(
    {
      code: 'lock-told-when',
      weight: 'strong',
      ask: `Was what is told of the lock of ${placeOf(valve)} seen before it was set again, or since?`,
      knownBy: 'lock told when',
      size: 'By the lash log it was set again, held, and the gap grew all the same; the answers speak for its lock.',
      test: `Ask whether the lock was changed when it was set, and look at ${lock} as they are now.`,
      byLooking: true,
      restsOn: told.flatMap((each) => lastSaid(each, evidence)?.entry.id ?? []),
    },
    { about: valveSubject(valve), step: 'noise', answers: evidence.answers, choices: CHOICES },
  );
  const chosen = chosenOf(question);
  return {
    aside: chosen === 'since' ? [] : told,
    question,
  };
}
