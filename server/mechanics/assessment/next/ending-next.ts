import type { Headline, NextAction } from '../assessment.ts';
import type { Lacking } from '../missing/missing.ts';
import { BUILD, lackingNext } from './lacking-next.ts';

const WHOLE = 'Everything that the answer needs is there.';

const CLOSE: NextAction = {
  id: 'next:notes:close',
  action: 'close',
  step: 'notes',
  about: BUILD,
  sentence: 'Nothing is left to read or to say: close the call.',
  sentenceAtBench: 'Nothing is left to read.',
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
}

/** More than this is not said at once: it is on the page. */
const LONGEST = 300;

/** The answer with what else is told by the same step, as far as that is said in one go; nothing where the first is not. */
function foundIn([first, ...others]: readonly Headline[]): string {
  let found = first === undefined || first.sentence.length > LONGEST ? '' : first.sentence;
  if (found === '') return found;
  for (const { step, sentence } of others) {
    if (step !== first?.step || found.length + sentence.length > LONGEST) break;
    found = `${found} ${sentence}`;
  }
  return found;
}

const WHO = 'who does what by when';

/** The last minute: what was found, what is not known, who does what by when, and that it is written down. */
function toSay({ headlines, lacking }: EndGiven, ask: string): Pick<NextAction, 'sentence' | 'besideAnswer'> {
  const found = foundIn(headlines);
  if (found === '') return { sentence: ask };
  const others = lacking.some(({ need }) => need.code === 'valves') ? ' Not known: the other valves.' : '';
  const then = `Then ${WHO}; write it in the notes.`;
  return {
    sentence: `Say what was found. ${found}${others} ${then}`,
    besideAnswer: `Say what was found.${others} ${then}`,
  };
}

/** The same at the engine: what was found, and that the desk goes on from there. */
function toHear({ headlines }: EndGiven): Pick<NextAction, 'sentenceAtBench' | 'besideAnswerAtBench'> {
  const found = foundIn(headlines);
  const then = `The desk says ${WHO}.`;
  return { sentenceAtBench: found === '' ? then : `Found: ${found} ${then}`, besideAnswerAtBench: then };
}

/** With nothing left that the answer needs: what was found is said, then what was promised is kept. */
export function endingNext(given: EndGiven): NextAction | undefined {
  const found = lackingNext(given.atEnd.filter(({ need }) => need.must));
  if (found === undefined) return undefined;
  if (found.action !== 'said') return { ...found, reason: WHOLE };
  return {
    ...found,
    ...toSay(given, found.sentence),
    ...toHear(given),
    ...whereFound(given.headlines),
    reason: WHOLE,
  };
}
