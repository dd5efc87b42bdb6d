import type { AssessedQuestion } from '../assessment.ts';
import { AGAINST_CALCULATED } from '../gaps/gap-found-off.ts';
import { READ_TWICE } from '../gaps/misread.ts';
import type { GapGroup } from './groups.ts';
import { BINDS_ALREADY } from './springs-bind.ts';

/** With which arms it was read: with another answer the gap is one that was read, or is worked out from another ratio. */
const OF_ARMS: ReadonlySet<string> = new Set(['gap-arms-then', 'planned-arm-on']);

/** Whether a figure was read and written right: with another answer what rests on it is another gap. */
const OF_READING: ReadonlySet<string> = new Set([
  'decimal-slip',
  'digits-swapped',
  READ_TWICE,
  'scan-apart',
  'scan-below-nothing',
  'scan-copied',
  'scan-jumps',
]);

/** Whether a figure of the build is so, of which what comes out is made. */
const OF_FIGURES: ReadonlySet<string> = new Set(['figure-unusual', 'figures-impossible']);

/** Whether the answer may make something else of every gap of a group. */
function mayTakeAway(
  { code, restsOn, about, weight }: AssessedQuestion,
  { name, members }: GapGroup,
): boolean {
  if (OF_FIGURES.has(code)) return weight === 'strong';
  if (OF_ARMS.has(code) || (OF_READING.has(code) && weight === 'strong'))
    return members.every(({ gap }) => gap.restsOn.some((id) => restsOn.includes(id)));
  return code === BINDS_ALREADY && name === 'coil-bind' && about.of === 'build';
}

/** A gap that was read as more than what comes out speaks against figures by which the others are short. */
const speaksAgainst = ({ code, weight }: AssessedQuestion, { members }: GapGroup): boolean =>
  code === AGAINST_CALCULATED &&
  weight === 'weak' &&
  members.every(({ gap }) => gap.after?.basis === 'calculated' && gap.before?.basis !== 'measured');

interface AskedOfGap {
  readonly question: AssessedQuestion;
  /** The gap that it is asked of, where it is of one alone. */
  readonly name?: string;
}

/**
 * Open questions by whose answer a gap that comes out short may not be short, each once, however many plans raise it: they
 * go before what is done about it.
 */
export const hangsOn = (group: GapGroup, asked: readonly AskedOfGap[]): string[] => {
  const open = asked.flatMap(({ question, name }) =>
    question.answered === undefined &&
    (mayTakeAway(question, group) || (name === group.name && speaksAgainst(question, group)))
      ? [question.id]
      : [],
  );
  return [...new Set(open)];
};
