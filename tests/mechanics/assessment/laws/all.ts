import { nothingAgainstItsConditions } from './conditions.ts';
import { nothingCountedTwice } from './counted-once.ts';
import { nothingIsClearAgainstAReading } from './denied.ts';
import type { Law } from './law.ts';
import { nextRestsOnTheFirst } from './next-question.ts';
import { aCauseIsNoVerdict } from './noise.ts';
import { whatCannotBeComputedSaysSo } from './nothing-disappears.ts';
import { headlineAndNextAskTheSame } from './one-first.ts';
import { orderDoesNotMatter } from './order.ts';
import { plannedIsJudgedAsPlanned } from './planned.ts';
import { readAgainReplacesNothing } from './read-again.ts';
import { noFigureFinerThanItsSource } from './source.ts';
import { aStopIsAStop } from './stop.ts';
import { toldLateCounts } from './told-late.ts';
import { verdictAndExplanationAgree } from './verdict-and-explanation.ts';
import { worstGapStands } from './worst-gap.ts';

/** The laws of the assessment by their number; the second, one voice, is held to the faces themselves. */
export const LAWS = {
  '1 order does not matter': orderDoesNotMatter,
  '1 what is told late counts': toldLateCounts,
  '3 nothing stands against its own conditions': nothingAgainstItsConditions,
  '3 no gap is clear on a ratio that its readings deny': nothingIsClearAgainstAReading,
  '3 a cause is no verdict': aCauseIsNoVerdict,
  '4 nothing is counted twice': nothingCountedTwice,
  '5 the worst reading of a gap stands': (assessed) => [
    ...worstGapStands(assessed),
    ...readAgainReplacesNothing(assessed),
  ],
  '6 headline and next ask for the same first': headlineAndNextAskTheSame,
  '6 what is next rests on the first question': nextRestsOnTheFirst,
  '6 verdict and explanation agree': verdictAndExplanationAgree,
  '7 what cannot be computed says so': whatCannotBeComputedSaysSo,
  '8 a planned part is judged as planned': plannedIsJudgedAsPlanned,
  '9 a stop is a stop': aStopIsAStop,
  '10 no figure is finer than its source': noFigureFinerThanItsSource,
} as const satisfies Readonly<Record<string, Law>>;
