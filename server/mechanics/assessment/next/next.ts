import type { GoalPlan } from '../../../../shared/schemas/goals.ts';
import type { StepName } from '../../../../shared/steps.ts';
import type { AssessedQuestion, Headline, NextAction, NotToRun, StopReason } from '../assessment.ts';
import type { NextOfChange } from '../change/next-of-change.ts';
import { keyOf } from '../common/said.ts';
import type { Lacking } from '../missing/missing.ts';
import type { NextOfPart } from '../part/tell.ts';
import type { GroupExplained } from '../ratio/compared/explain.ts';
import type { NextOfSheet } from '../sheet/next/next-of-sheet.ts';
import { actionUnder } from '../stop.ts';
import { closingNext, endingNext } from './ending-next.ts';
import { isRows, lackingNext } from './lacking-next.ts';
import { notToRunNext, toReadBeforeRunning } from './not-to-run-next.ts';
import type { NextOfNoise } from './of-noise.ts';
import { heldNext, mendNext, questionNext, sheetDoubtNext } from './question-next.ts';
import { readingNext } from './reading-next.ts';

interface NextGiven {
  readonly closed: boolean;
  readonly stop: readonly StopReason[];
  readonly lacking: readonly Lacking[];
  /** Why nobody runs it as it is, or fits what is planned. */
  readonly notToRun: readonly NotToRun[];
  /** What is still to be said or done at the end of the call. */
  readonly atEnd: readonly Lacking[];
  readonly questions: readonly AssessedQuestion[];
  readonly explained: readonly GroupExplained[];
  readonly headlines: readonly Headline[];
  readonly plan: GoalPlan;
  /** What the per-valve sheet asks for, where a valve differs from its siblings, and what of it can wait. */
  readonly ofSheet: NextOfSheet;
  /** What the tip marks ask to be changed, or inked again. */
  readonly ofMarks: NextAction | undefined;
  /** What the answer of a gap that grew leads to. */
  readonly mend: NextAction | undefined;
  /** What parts the causes of noise or a failure. */
  readonly ofNoise: NextOfNoise;
  /** What the gaps wait for, where the call is about what a ratio does. */
  readonly ofChange: NextOfChange | undefined;
  /** What a loose part is asked, and the measurement of it that settles most, where the call is about one. */
  readonly ofPart: NextOfPart | undefined;
}

/** More passes of what was read: a doubt about those there are goes first. */
const isMorePasses = ({ need }: Lacking): boolean => /^(valve|lobe)-passes:/.test(need.code);

/** A doubt of one of these steps, or of another whose answer they wait for. */
const isOfSteps = ({ step, alsoOf = [] }: AssessedQuestion, steps: readonly StepName[]): boolean =>
  alsoOf === 'every' || [step, ...alsoOf].some((each) => steps.includes(each));

const isBeforeReading = ({ beforeReading, answered }: AssessedQuestion): boolean =>
  answered === undefined && beforeReading === true;

/** What the answer of the goal is made of, in the order in which it is asked for. */
function forAnswer({
  lacking,
  notToRun,
  questions,
  explained,
  ofSheet,
  ofPart,
  ofNoise,
  ofMarks,
  ofChange,
  plan,
}: NextGiven): NextAction | undefined {
  const steps: readonly StepName[] = [
    'triage',
    ...plan.asks,
    ...(plan.byRatio === true ? ['ratio' as const] : []),
  ];
  const must = lacking.filter(({ need }) => need.must);
  // What turns nothing is asked for first.
  const more = lacking
    .filter(({ need }) => !need.must && plan.needs.includes(need.code))
    .toSorted((a, b) => Number(a.need.turns) - Number(b.need.turns));
  const sheet = steps.includes('sheet') ? ofSheet : undefined;
  // Which ratio is planned is not asked while nobody has said what the arms before are not run with.
  const isPlanning = plan.isChange === true && must.some(({ need }) => need.code === 'planned');
  const withoutRows = must.filter((each) => !isRows(each));
  const beforeRunning = toReadBeforeRunning(notToRun, isPlanning);
  return (
    lackingNext(must.filter(({ step }) => step === 'triage')) ??
    ofNoise.ask ??
    ofPart?.answer ??
    (sheet === undefined ? undefined : sheetDoubtNext(questions)) ??
    questionNext(questions.filter((each) => isBeforeReading(each) && isOfSteps(each, steps))) ??
    lackingNext(lacking.filter(({ need }) => need.begun)) ??
    (beforeRunning === undefined ? shortNext(ofChange?.short, ofSheet) : undefined) ??
    heldNext(ofChange?.held, questions) ??
    questionNext(questions.filter((each) => isOfSteps(each, steps))) ??
    (ofChange?.doubted === undefined ? undefined : (readingNext(explained) ?? ofChange.doubted)) ??
    ofNoise.again ??
    beforeRunning ??
    (plan.byRatio === true ? sheet?.whole : undefined) ??
    lackingNext(must.filter(({ need }) => need.started)) ??
    lackingNext(withoutRows.filter((each) => !isMorePasses(each))) ??
    ofNoise.look ??
    lackingNext(withoutRows) ??
    ofNoise.why ??
    sheet?.clear ??
    lackingNext(must) ??
    sheet?.later ??
    ofNoise.read ??
    ofChange?.close ??
    (plan.byRatio === true ? readingNext(explained) : undefined) ??
    ofPart?.measure ??
    lackingNext(more) ??
    (steps.includes('geometry') ? ofMarks : undefined)
  );
}

/** A gap comes out short: what the sheet asks of that very valve may take it away, and goes first. */
const shortNext = (
  short: NextAction | undefined,
  { clear, later }: Pick<NextOfSheet, 'clear' | 'later'>,
): NextAction | undefined =>
  short &&
  ([clear, later].find((each) => each !== undefined && keyOf(each.about) === keyOf(short.about)) ?? short);

/** What was set again is read again once locked; else what a gap that grew still wants, by its answer too. */
const mended = ({ lacking, questions, mend }: NextGiven): NextAction | undefined =>
  lackingNext(lacking.filter(({ need }) => need.code === 'lash-again')) ?? mendNext(questions) ?? mend;

/**
 * The one thing worth most now: under a stop what the stop needs; else a gap whose stop was lifted to read it again, or
 * parts that are not to be fitted; then what the answer of the goal needs and nothing else: the doubts of the sheet, what
 * it lacks, a gap that comes out short, the test of a strong doubt, the reading that settles an arm so far off that no gap has a word by it, what is read before it runs, the test of a ratio that a whole side is off, what is set up and not read yet, more passes, what tells a clear odd valve's part from its position, the rows that
 * are left, the reading that tells most, of the engine or of the part. Of a noise what is asked or seen as it stands goes
 * first, what is seen with parts off behind the doubts, why an adjuster moved then, and its lobe last;
 * one that was set again since is read again before anything else of it. Then what was found is said, and only then a
 * doubt about something else is asked.
 */
export function nextOf(given: NextGiven): NextAction | undefined {
  const { closed, stop, notToRun, questions } = given;
  const under = actionUnder(stop, questions);
  if (under !== undefined) return under;
  if (closed) return undefined;
  return (
    notToRunNext(notToRun, questions) ??
    forAnswer(given) ??
    (given.plan.asks.includes('adjuster') ? mended(given) : undefined) ??
    endingNext(given) ??
    questionNext(questions) ??
    closingNext(given.headlines)
  );
}
