import type { Assessment } from '../../server/mechanics/assessment/assessment.ts';
import type { ExplanationResult } from '../../server/mechanics/assessment/ratio/compared/explanation.ts';
import type { JudgementWord } from '../../server/mechanics/assessment/words.ts';
import type { TrueCall } from '../mechanics/explain-readings/simulated-call.ts';

/** What is heard of the arm on the valve that the call is about. */
export interface Heard {
  readonly result: ExplanationResult;
  /** The word against the mark, where one stands. */
  readonly word: JudgementWord | undefined;
}

/** The arm on the valve of the call; once all that was read there is struck out, on the valve it was moved to. */
const VALVES = ['1-intake', '3-intake'] as const;

export function heardOf({ explanations, judgements }: Assessment): Heard {
  for (const valve of VALVES) {
    const isHere = (id: string) => id.split(':')[1] === valve;
    const result = explanations.find(({ id }) => isHere(id))?.result;
    if (result === undefined) continue;
    return { result, word: judgements.find(({ id, against }) => isHere(id) && against.to === 'mark')?.word };
  }
  throw new Error('the readings could not be weighed');
}

/** What was heard, set against what is really so. */
export interface Judged {
  /** Chance of the best name, as it is said. */
  readonly said: number;
  readonly right: boolean;
  /** The true ratio lies in the 95 % interval. */
  readonly held: boolean;
  /** Half-width of the interval, a share of the ratio. */
  readonly half: number;
  /** The median lies within 1.5 % of the true ratio. */
  readonly near: boolean;
  readonly settled: boolean;
  readonly word: JudgementWord | undefined;
  /** Bands chose the word: the inference leaves it open. */
  readonly byBand: boolean;
  /** The arm is within 2 % of its mark. */
  readonly withinMark: boolean;
}

interface Weighed {
  readonly ratio: { readonly median: number; readonly interval95: readonly [number, number] };
  readonly nominals: readonly { readonly ratio: number; readonly probability: number }[];
  readonly settled: boolean;
}

export function judgedAgainst(
  call: TrueCall,
  { ratio, nominals, settled }: Weighed,
  word?: JudgementWord,
  ruled?: JudgementWord,
): Judged {
  const best = nominals.reduce((a, b) => (b.probability > a.probability ? b : a));
  const [low, high] = ratio.interval95;
  return {
    said: best.probability,
    right: call.listed && best.ratio === call.name,
    held: low <= call.ratio && call.ratio <= high,
    half: (high - low) / 2 / ratio.median,
    near: Math.abs(ratio.median / call.ratio - 1) <= 0.015,
    settled,
    word,
    byBand: word !== undefined && word !== ruled,
    withinMark: Math.abs(call.ratio / (call.said.mark ?? Number.NaN) - 1) <= 0.02,
  };
}
