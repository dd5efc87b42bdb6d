import { beginsWith } from '../../../../shared/begins-with.ts';
import { ADJUSTER_WORDS } from '../../lash/adjuster-words.ts';
import type { AssessedQuestion, Subject } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import { lastSaid, noisyValve } from './answers.ts';
import { type NoiseRecord, nutLine } from './of-record.ts';

type Nut = 'held' | 'moved';

const CHOICES: AssessedQuestion['answers'] = [
  { code: 'moved', label: 'It had moved', changes: 'It counts as moved; both entries stay on the record.' },
  { code: 'held', label: 'It had not moved', changes: 'It counts as held; both entries stay on the record.' },
];

const NUT_SAID: Readonly<Record<Nut, string>> = { held: 'held', moved: 'had moved' };

/** What counts of the nut, where the answer and the lash log speak of it. */
export interface NutTold {
  /** As it was answered, or as it was settled; left out while answer and log say otherwise, and where nobody said. */
  readonly counts?: string;
  /** The answer and the log say otherwise, and nobody has said which is so: neither counts. */
  readonly open: boolean;
  readonly question?: AssessedQuestion;
}

/** The answer about the nut beside the newest line of each log in question that looked at it. */
export function nutTold(evidence: Evidence, { lash }: Pick<NoiseRecord, 'lash'>): NutTold {
  const said = lastSaid('noise-nut', evidence);
  const answer = said?.answer;
  if (said === undefined || (answer !== 'held' && answer !== 'moved'))
    return { open: false, ...(answer === undefined ? {} : { counts: answer }) };
  const place: ValvePlace | undefined = noisyValve(evidence);
  const contrary = lash.valves.flatMap((valve) => {
    const line = nutLine(valve);
    const own = place === undefined || placeOf(place) === placeOf(valve);
    const other = line !== undefined && line.nut !== 'not-looked' && line.nut !== answer;
    return own && other ? [{ line, valve }] : [];
  });
  const [first] = contrary;
  if (first === undefined) return { open: false, counts: answer };
  const about: Subject = valveSubject(first.valve);
  const other: Nut = answer === 'held' ? 'moved' : 'held';
  const question = asked(
    {
      code: 'nut-told-twice',
      weight: 'strong',
      ask: `The ${ADJUSTER_WORDS[lash.adjuster].part} of ${placeOf(first.valve)} ${NUT_SAID[answer]}, it was answered; by the lash log it ${NUT_SAID[other]}. Which is so?`,
      knownBy: 'nut told twice',
      test: `Look at ${ADJUSTER_WORDS[lash.adjuster].lock} before anything is touched, or ask who looked.`,
      byLooking: true,
      restsOn: [said.entry.id, first.line.id],
    },
    { about, step: 'noise', answers: evidence.answers, choices: CHOICES },
  );
  const settled = CHOICES.find(({ code }) => beginsWith(question.answered?.answer ?? '', code))?.code;
  const told: AssessedQuestion = settled === undefined ? question : { ...question, weight: 'weak' };
  return {
    open: settled === undefined,
    question: told,
    ...(settled === undefined ? {} : { counts: settled }),
  };
}
