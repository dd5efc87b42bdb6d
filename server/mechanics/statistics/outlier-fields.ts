/** On which side a value is looked for that does not belong. */
export type Tail = 'two' | 'upper' | 'lower';

export interface OutlierScores {
  /** One per value, signed: above or below the middle. */
  readonly scores: readonly number[];
  /** Indices from zero of those past the critical value. */
  readonly flagged: readonly number[];
  readonly critical: number;
}

/** How far out a signed score is on the side looked at. */
export function outBy(score: number, tail: Tail): number {
  if (tail === 'two') return Math.abs(score);
  return tail === 'upper' ? score : -score;
}
