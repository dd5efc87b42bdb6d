import { defined } from '../../../../shared/defined.ts';
import { SIDES } from '../../../../shared/sides.ts';
import { isWithin } from '../../kit/within.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { keyOf, listed } from '../common/said.ts';
import type { Evidence, Side } from '../evidence.ts';
import type { HeldPeak } from './against-card.ts';
import { isFoundWrong } from './duration.ts';
import { LOBE_AGAIN } from './lobe-again.ts';
import { APART, degrees, isOut, ofSide, stopFor, type TimingRead, withoutError } from './readings.ts';

type Peaks = readonly HeldPeak[];

const spanOf = (all: readonly number[]): number => Math.max(...all) - Math.min(...all);

/**
 * How far they stand apart at the least: as they were read, or with the pointer's error taken off those that were read
 * before the stop showed it out. One pointer was left for all of these, or for none.
 */
function span(peaks: Peaks, read: TimingRead): number {
  const asRead = peaks.map(({ centreline }) => centreline);
  const asLeft = peaks.map((peak) => {
    const stop = stopFor(read, peak);
    const isKnown = peak.righted || peak.shifted === true || !isOut(stop);
    return (isKnown ? peak : withoutError(peak, stop)).centreline;
  });
  return Math.min(spanOf(asRead), spanOf(asLeft));
}

const TEST =
  'read the same lobe once more at equal drop, coming up to the lift in running direction each time.';

/** Read one way they differ where cam or wheel was moved. */
function differ(peaks: Peaks, read: TimingRead, { answers }: Evidence): AssessedQuestion | undefined {
  const [first] = peaks;
  if (first === undefined || isWithin(span(peaks, read), APART)) return undefined;
  const values = [...new Set(peaks.map(({ centreline }) => centreline))].toSorted((a, b) => a - b);
  return asked(
    {
      code: 'centrelines-differ',
      weight: 'strong',
      ask: 'Was the cam moved between these readings, or was one of them read wrong?',
      size: `The ${first.side} was read at ${listed(values.map((each) => `${degrees(each)}°`))}.`,
      test: TEST,
      restsOn: [],
    },
    {
      about: { of: 'side', valve: first.side },
      step: 'timing',
      answers,
      choices: [
        { code: 'not-found', label: 'The cam was moved between', changes: 'What was read last counts.' },
        {
          code: 'found',
          label: 'One was read wrong',
          changes: 'The lobe is read again; that counts then.',
          leadsTo: LOBE_AGAIN,
        },
      ],
    },
  );
}

const WAYS: AssessedQuestion['answers'] = [
  { code: 'moved', label: 'The cam was moved between', changes: 'What was read last counts.' },
  { code: 'asymmetric', label: 'The lobe is not symmetric', changes: 'What was read at equal drop counts.' },
  {
    code: 'found',
    label: 'One was read or told wrong',
    changes: 'The lobe is read again; that counts then.',
    leadsTo: LOBE_AGAIN,
  },
];

/** By its events and at equal drop they differ where the lobe is not symmetric as well. */
function waysApart(read: TimingRead, side: Side, { answers }: Evidence): AssessedQuestion | undefined {
  const peaks = ofSide(read, side);
  const [drop, events] = [false, true].map((way) => peaks.findLast(({ fromEvents }) => fromEvents === way));
  if (drop === undefined || events === undefined) return undefined;
  const off = span([drop, events], read);
  if (isWithin(off, APART)) return undefined;
  return asked(
    {
      code: 'centrelines-differ',
      weight: 'strong',
      ask: 'Was the cam moved between these two readings, is the lobe not symmetric, or was a side told wrong?',
      size: `At equal drop the ${side} peaks at ${degrees(drop.centreline)}°, by its events at ${degrees(events.centreline)}°: ${degrees(off)}° apart.`,
      test: TEST,
      restsOn: [],
    },
    { about: { of: 'side', valve: side }, step: 'timing', among: 'ways', answers, choices: WAYS },
  );
}

/** One was read wrong: what was read since that was said counts, and is compared by itself. */
function sinceWrong(
  peaks: Peaks,
  evidence: Evidence,
  ask: (peaks: Peaks) => AssessedQuestion | undefined,
): AssessedQuestion[] {
  const question = ask(peaks);
  if (question?.answered?.found !== true) return question === undefined ? [] : [question];
  const since = evidence.answers.find(({ id }) => id === question.answered?.entryId)?.line ?? 0;
  const again = peaks.filter(({ line }) => line > since);
  const asksAgain = again.length === 0 ? question : ask(again);
  return asksAgain === undefined ? [] : [asksAgain];
}

/** Two centrelines of one lobe that stand apart: read one way each, else by its two ways. */
function ownDiffering(read: TimingRead, side: Side, evidence: Evidence): AssessedQuestion[] {
  // One whose events were found wrong is compared with nothing.
  const all = ofSide(read, side).filter((peak) => !isFoundWrong(peak, evidence));
  const own = [true, false].flatMap((fromEvents) =>
    sinceWrong(
      all.filter((peak) => peak.fromEvents === fromEvents),
      evidence,
      (peaks) => differ(peaks, read, evidence),
    ),
  );
  const ways = sinceWrong(all, evidence, (peaks) => waysApart({ ...read, peaks }, side, evidence));
  return [...own, ...ways];
}

const MOVED: ReadonlySet<string | undefined> = new Set(['not-found', 'moved']);

/** Said of one lobe, that the cam was moved is said of the other too: of all that was read of it till then. */
function movedFor(own: readonly AssessedQuestion[], read: readonly HeldPeak[], { answers }: Evidence) {
  return own.find(({ answered, ...question }) => {
    const said = answers.find(({ id }) => id === answered?.entryId);
    if (said === undefined || !MOVED.has(chosenOf({ ...question, ...defined({ answered }) }))) return false;
    return read.every(({ line }) => line < said.line);
  })?.answered;
}

/** The same, where one cam turns both lobes: who said of the one that it was moved between is not asked of the other. */
export function differing(read: TimingRead, side: Side, evidence: Evidence): AssessedQuestion[] {
  const other = SIDES.flatMap((each) => (each === side ? [] : ownDiffering(read, each, evidence)));
  const moved = movedFor(other, ofSide(read, side), evidence);
  return ownDiffering(read, side, evidence).map((question) => {
    const code = question.answers.find((each) => MOVED.has(each.code))?.code;
    if (moved === undefined || question.answered !== undefined || code === undefined) return question;
    // Of the question with three answers neither of the first two leaves a doubt.
    return { ...question, weight: 'weak', answered: { ...moved, answer: code, found: false } };
  });
}

/** Of both lobes, each still open: asked of the first, and of the other only where that one was read wrong. */
export function askedOnce(differ: readonly AssessedQuestion[]): AssessedQuestion[] {
  const first = differ.find(({ answered }) => answered === undefined);
  return differ.filter(
    (each) =>
      each === first ||
      each.answered !== undefined ||
      keyOf(each.about) === keyOf(first?.about ?? each.about),
  );
}

/** The reading of a lobe that counts: the last, or the last at equal drop where the lobe was said not to be symmetric. */
export function countingOf(read: TimingRead, side: Side, evidence: Evidence): HeldPeak | undefined {
  const all = ofSide(read, side);
  const sound = all.filter((peak) => !isFoundWrong(peak, evidence));
  // One whose events were found wrong counts where there is no other: it is told what it waits for.
  const peaks = sound.length === 0 ? all : sound;
  const ways = waysApart({ ...read, peaks }, side, evidence);
  return ways !== undefined && chosenOf(ways) === 'asymmetric'
    ? peaks.findLast(({ fromEvents }) => !fromEvents)
    : peaks.at(-1);
}
