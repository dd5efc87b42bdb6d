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

/** A headline that is longer than can be said at once is on the page; here it is only said that it is told. */
const LONGEST = 300;

/** The last minute: what was found, what is not known, who does what by when, and that it is written down. */
function toSay({ headlines, lacking }: EndGiven, ask: string): string {
  const [found] = headlines;
  if (found === undefined || found.sentence.length > LONGEST) return ask;
  const others = lacking.some(({ need }) => need.code === 'valves') ? ' Not known: the other valves.' : '';
  return `Say what was found. ${found.sentence}${others} Then who does what by when; write it in the notes.`;
}

/** The same at the engine: what was found, and that the desk goes on from there. */
function toHear({ headlines: [found] }: EndGiven): string {
  const said = found === undefined || found.sentence.length > LONGEST ? '' : `Found: ${found.sentence} `;
  return `${said}The desk says who does what by when.`;
}

/** With nothing left that the answer needs: what was found is said, then what was promised is kept. */
export function endingNext(given: EndGiven): NextAction | undefined {
  const found = lackingNext(given.atEnd.filter(({ need }) => need.must));
  if (found === undefined) return undefined;
  if (found.action !== 'said') return { ...found, reason: WHOLE };
  return {
    ...found,
    sentence: toSay(given, found.sentence),
    sentenceAtBench: toHear(given),
    ...whereFound(given.headlines),
    reason: WHOLE,
  };
}
