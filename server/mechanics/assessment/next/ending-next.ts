import type { Headline, NextAction } from '../assessment.ts';
import type { NextOfChange } from '../change/next-of-change.ts';
import { NOT_KNOWN } from '../change/not-known.ts';
import type { Lacking } from '../missing/missing.ts';
import { BUILD, lackingNext } from './lacking-next.ts';

const WHOLE = 'Everything that the answer needs is there.';
const NOTHING = 'Nothing that was entered tells of it yet: that is what is said.';
const IN_PART = 'What it asks for is there. What is not known yet is said with the answer.';

const CLOSE: NextAction = {
  id: 'next:notes:close',
  action: 'close',
  step: 'notes',
  about: BUILD,
  sentence: 'What this call is about is read and said: close the call.',
  sentenceAtBench: 'What this call is about is read.',
  closes: true,
  reason: WHOLE,
  turns: false,
};

/** Whoever stands at the engine is shown what was found; the notes are the desk's. */
const whereFound = ([found]: readonly Headline[]): Pick<NextAction, 'stepAtBench'> =>
  found === undefined ? {} : { stepAtBench: found.step };

/** The end of a call. */
export const closingNext = (headlines: readonly Headline[]): NextAction => ({
  ...CLOSE,
  ...whereFound(headlines),
});

interface EndGiven {
  /** What is still to be said or done at the end of the call. */
  readonly atEnd: readonly Lacking[];
  readonly lacking: readonly Lacking[];
  readonly headlines: readonly Headline[];
  readonly ofChange: Pick<NextOfChange, 'notKnown' | 'notMeasured'> | undefined;
}

/** More than this is not said at once: it is in the report. */
const LONGEST = 300;

/** What does not go into that is not passed over in silence. */
const IN_REPORT = ' The report has the rest of it.';

interface Found {
  readonly first: string;
  /** What else is told by the same step. */
  readonly others: string;
}

/** The answer with what else is told by the same step, as far as that is said in one go; nothing where the first is not. */
function foundIn([first, ...more]: readonly Headline[]): Found | undefined {
  if (first === undefined || first.sentence.length > LONGEST) return undefined;
  let others = '';
  for (const { id, step, sentence } of more) {
    // What is not known is said in a breath of its own, however little room there is.
    if (id === NOT_KNOWN) continue;
    if (step !== first.step) break;
    if (first.sentence.length + others.length + sentence.length > LONGEST)
      return { first: first.sentence, others: `${others}${IN_REPORT}` };
    others = `${others} ${sentence}`;
  }
  return { first: first.sentence, others };
}

/** Of a part in the hand no ratio is known before a valve was read: that is said with what the part is. */
const isRatioOpen = ({ lacking }: Pick<EndGiven, 'lacking'>): boolean =>
  lacking.some(({ step, need }) => step === 'identify' && need.code === 'ratio');

const WHO = 'who does what by when';

/** Gaps that nothing is known of, unless that is the answer itself. */
const gapsSaid = ({ ofChange, headlines: [first] }: Pick<EndGiven, 'ofChange' | 'headlines'>): string =>
  ofChange?.notKnown === undefined || first?.id === NOT_KNOWN ? '' : ` Not known yet: ${ofChange.notKnown}.`;

/** One valve says nothing of the others. */
const valvesSaid = ({ lacking }: Pick<EndGiven, 'lacking'>): string =>
  lacking.some(({ need }) => need.code === 'valves') ? ' Not known: the other valves.' : '';

/** The last minute: what was found, what is not known, who does what by when, and that it is written down. */
function toSay(given: EndGiven, ask: string): Pick<NextAction, 'sentence' | 'besideAnswer'> {
  const found = foundIn(given.headlines);
  if (found === undefined) return { sentence: ask };
  const then = `${found.others}${valvesSaid(given)}${gapsSaid(given)} Then ${WHO}; write it in the notes.`;
  return {
    sentence: `Say what was found. ${found.first}${then}`,
    besideAnswer: `Say what was found.${then}`,
  };
}

/** The same at the engine: what was found, and that the desk goes on from there. */
function toHear(given: EndGiven): Pick<NextAction, 'sentenceAtBench' | 'besideAnswerAtBench'> {
  const found = foundIn(given.headlines);
  const then = `The desk says ${WHO}.`;
  return found === undefined
    ? { sentenceAtBench: then, besideAnswerAtBench: then }
    : {
        sentenceAtBench: `Found: ${found.first}${found.others}${valvesSaid(given)}${gapsSaid(given)} ${then}`,
        besideAnswerAtBench: `${found.others}${valvesSaid(given)}${gapsSaid(given)} ${then}`.trim(),
      };
}

/**
 * With nothing left that the answer needs: what was found is said, then what nothing is known of is measured, and what was
 * promised is kept.
 */
export function endingNext(given: EndGiven): NextAction | undefined {
  const found = lackingNext(given.atEnd.filter(({ need }) => need.must));
  if (found?.action !== 'said')
    return given.ofChange?.notMeasured ?? (found === undefined ? undefined : { ...found, reason: WHOLE });
  return {
    ...found,
    ...toSay(given, found.sentence),
    ...toHear(given),
    ...whereFound(given.headlines),
    reason:
      given.headlines.length === 0
        ? NOTHING
        : given.ofChange?.notKnown === undefined && !isRatioOpen(given)
          ? WHOLE
          : IN_PART,
  };
}
