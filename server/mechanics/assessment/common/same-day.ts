import { allowance } from '../../kit/allowances.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { inLogOrder } from '../../lash/log-order.ts';
import type { AssessedQuestion } from '../assessment.ts';
import type { Evidence, LashEvidence } from '../evidence.ts';
import { asked } from './asked.ts';
import { chosenOf } from './chosen.ts';
import { lashSaid } from './gap-said.ts';
import { placeOf, valveSubject } from './said.ts';

/** A gap that was entered behind a setting of its day: found before it, or after. */
interface SameDay {
  readonly found: LashEvidence;
  readonly set: LashEvidence;
  readonly question: AssessedQuestion;
}

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'before',
    label: 'Found before it was set',
    changes: 'It is what was there before; what it was set to is what is there now.',
  },
  {
    code: 'after',
    label: 'Found after it was set',
    changes: 'It is what became of the setting, and is set against it.',
  },
];

/** The line of the first entry: one that was put right keeps its place. */
export const enteredAt = ({ entered, line }: LashEvidence): number => entered ?? line;

/** By the days that lines are of, then as they were first entered: one that was put right keeps its place. */
export const inOrder = (lines: readonly LashEvidence[]): LashEvidence[] =>
  inLogOrder(lines, (line) => ({ day: line.day, entered: enteredAt(line) }));

/** Read alike, it does not matter which was first. */
const isAlike = (a: LashEvidence, b: LashEvidence): boolean =>
  (a.gap.value ?? a.gap.high ?? 0) - (b.gap.value ?? b.gap.low ?? 0) <= allowance('repeat') + EQUAL &&
  (b.gap.value ?? b.gap.high ?? 0) - (a.gap.value ?? a.gap.low ?? 0) <= allowance('repeat') + EQUAL;

/**
 * The setting that a gap of its day was entered behind, where nothing says which came first: both were told on a later
 * day, and no gap of that day was entered before the setting.
 */
function settingOf(found: LashEvidence, log: readonly LashEvidence[]): LashEvidence | undefined {
  const ofDay = log.filter(({ day }) => day === found.day);
  const [first] = ofDay;
  const at = ofDay.indexOf(found);
  const isFirst = ofDay.slice(0, at).every(({ moment }) => moment === 'set');
  if (found.moment !== 'found' || !isFirst || first?.moment !== 'set') return undefined;
  return found.toldLater === true && first.toldLater === true && !isAlike(found, first) ? first : undefined;
}

/** Set again since: the gap of now does not hang on the order, only what it did before that. */
const isSetSince = (found: LashEvidence, log: readonly LashEvidence[]): boolean =>
  log.slice(log.indexOf(found) + 1).some(({ moment }) => moment === 'set');

/** What is asked of the log of one valve, its lines in order. */
export function sameDays(log: readonly LashEvidence[], { answers }: Evidence): SameDay[] {
  return log.flatMap((found): SameDay[] => {
    const set = settingOf(found, log);
    if (set === undefined) return [];
    const question = asked(
      {
        code: 'lash-order',
        weight: 'strong',
        ask: `Were the ${lashSaid(found.gap)} of ${placeOf(found)} found before it was set to ${lashSaid(set.gap)} that day, or after?`,
        knownBy: 'found before it was set or after',
        size: `Both are of ${found.day}, and the setting was entered first.`,
        test: 'ask whoever did it which came first; nothing has to be touched for it.',
        byLooking: true,
        restsOn: [found.id, set.id],
      },
      {
        about: valveSubject(found),
        step: 'adjuster',
        among: found.id,
        answers,
        choices: CHOICES,
      },
    );
    const withholds = !isSetSince(found, log) && chosenOf(question) === undefined;
    return [{ found, set, question: withholds ? question : { ...question, weight: 'weak' } }];
  });
}

/** A gap that was said to have been found before the setting goes before it. */
export function asItWasDone(log: readonly LashEvidence[], evidence: Evidence): LashEvidence[] {
  return sameDays(log, evidence).reduce<LashEvidence[]>(
    (lines, { found, set, question }) => {
      if (chosenOf(question) !== 'before') return lines;
      const others = lines.filter((each) => each !== found);
      return others.toSpliced(others.indexOf(set), 0, found);
    },
    [...log],
  );
}
