import type { ChangeGap } from './detail.ts';

const RANK = { short: 0, close: 1, clear: 3 } as const;

/** Short, close, held back, clear, not known; of one kind the least margin first. */
export function worstFirst(gaps: readonly ChangeGap[]): ChangeGap[] {
  const rank = ({ word, after }: ChangeGap) =>
    after === undefined ? 4 : word === undefined ? 2 : RANK[word];
  const least = ({ after, limit }: ChangeGap) => (after?.low ?? after?.value ?? 0) - limit.value;
  return gaps.toSorted((a, b) => rank(a) - rank(b) || least(a) - least(b));
}
