interface Line {
  readonly source: string;
  readonly share: number;
}

const LIMIT = /error limit$/;

/** Whole per cents that add up to a hundred: the largest remainders are rounded up. */
function wholePercents(shares: readonly number[]): number[] {
  const whole = shares.map((share) => Math.floor(share * 100 + 1e-9));
  const left =
    Math.round(shares.reduce((sum, share) => sum + share, 0) * 100) -
    whole.reduce((sum, each) => sum + each, 0);
  const up = shares
    .map((share, index) => ({ index, rest: share * 100 - (whole[index] ?? 0) }))
    .sort((a, b) => b.rest - a.rest || a.index - b.index)
    .slice(0, Math.max(0, left))
    .map(({ index }) => index);
  return whole.map((each, index) => each + (up.includes(index) ? 1 : 0));
}

/**
 * The shares of a budget as they are told, in whole per cent: together a hundred. What cancels because one indicator
 * read both lifts is taken off its two error limits, in proportion; its own line has none.
 */
export function toldShares(budget: readonly Line[]): (number | undefined)[] {
  const cancels = budget.reduce((sum, { share }) => sum + Math.min(0, share), 0);
  const limits = budget.filter(({ source, share }) => share > 0 && LIMIT.test(source));
  const ofLimits = limits.reduce((sum, { share }) => sum + share, 0);
  const kept = budget.filter(({ share }) => share >= 0);
  const shares = kept.map((line) =>
    limits.includes(line) && ofLimits > 0 ? line.share * (1 + cancels / ofLimits) : line.share,
  );
  const percents = wholePercents(shares);
  return budget.map((line) => percents[kept.indexOf(line)]);
}
