import type { Assessment } from '../../server/mechanics/assessment/assessment.ts';
import type { ExplanationResult } from '../../server/mechanics/assessment/ratio/explanation.ts';
import type { JudgementWord } from '../../server/mechanics/assessment/words.ts';
import type { TrueCall } from '../mechanics/explain-readings/simulated-call.ts';

/** What is heard of the arm on the valve that the call is about. */
export interface Heard {
  readonly result: ExplanationResult;
  /** The word against the mark, where one stands. */
  readonly word: JudgementWord | undefined;
  readonly assessment: Assessment;
}

const isOurs = (id: string, start: string): boolean => id.startsWith(`${start}:1-intake`);

export function heardOf(assessment: Assessment): Heard {
  const result = assessment.explanations.find(({ id }) => isOurs(id, 'explanation'))?.result;
  if (result === undefined) throw new Error('the readings could not be weighed');
  const judgement = assessment.judgements.find(
    ({ id, against }) => isOurs(id, 'ratio') && against.to === 'mark',
  );
  return { result, word: judgement?.word, assessment };
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
    withinMark: Math.abs(call.ratio / (call.said.mark ?? Number.NaN) - 1) <= 0.02,
  };
}
