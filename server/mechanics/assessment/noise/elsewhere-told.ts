import { ADJUSTER_WORDS } from '../../lash/adjuster-words.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { listed, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { nutHasMoved, nutLine } from '../lash/nut-moved.ts';
import { lastSaid, noisyValve } from './answers.ts';
import type { NoiseRecord } from './of-record.ts';

const BOTH = 'both';

const choicesOf = (noisy: string, moved: string, part: string): AssessedQuestion['answers'] => [
  {
    code: BOTH,
    label: `Both are so: the noise is at ${noisy}, and the ${part} of ${moved} had moved`,
    changes: 'Both count; it is not run before that lock is looked at.',
  },
  {
    code: 'noise-there',
    holds: true,
    label: `The noise is at ${moved}`,
    changes: 'Which valve makes the noise is answered once more.',
  },
  {
    code: 'line-wrong',
    holds: true,
    label: `The line of the log is of ${noisy}`,
    changes: 'The line is struck out with the reason, and entered for its own valve.',
  },
];

/** What is done once it is known which of the two was said wrong. */
const TESTS: Readonly<Record<string, string>> = {
  'noise-there': 'answer once more which valve makes the noise.',
  'line-wrong': 'strike that line of the lash log out, with the reason, and enter it for its own valve.',
};

/**
 * The noise is heard at a valve of which the log tells nothing loose, and the log has a lock elsewhere that let go: one
 * valve taken for another, or two of them. What the log has stands meanwhile.
 */
export function elsewhereTold(
  evidence: Evidence,
  { lash }: Pick<NoiseRecord, 'lash'>,
): AssessedQuestion | undefined {
  const place = noisyValve(evidence);
  const said = lastSaid('noise-which', evidence);
  if (place === undefined || said === undefined) return undefined;
  const moved = lash.valves.filter((valve) => nutHasMoved(valve, lash));
  if (moved.length === 0 || moved.some((valve) => placeOf(valve) === placeOf(place))) return undefined;
  const { part, lock } = ADJUSTER_WORDS[lash.adjuster];
  const names = listed(moved.map(placeOf));
  const put = (test: string) =>
    asked(
      {
        code: 'noise-elsewhere',
        weight: 'strong',
        ask: `The noise is at ${placeOf(place)}; the lash log has the ${part} of ${names} moved. Is that one valve or two?`,
        knownBy: `noise elsewhere than ${moved.map(placeOf).join(' and ')}`,
        test,
        byLooking: true,
        restsOn: [said.entry.id, ...moved.flatMap((valve) => nutLine(valve)?.id ?? [])],
      },
      {
        about: valveSubject(place),
        step: 'noise',
        among: moved.map(({ cylinder, valve }) => `${cylinder}-${valve}`).join('-'),
        answers: evidence.answers,
        choices: choicesOf(placeOf(place), names, part),
      },
    );
  const question = put(
    `look at ${lock} of ${names} before anything is touched, and ask which valve is heard.`,
  );
  const chosen = chosenOf(question);
  return chosen === undefined || chosen === BOTH ? question : put(TESTS[chosen] ?? question.test);
}
