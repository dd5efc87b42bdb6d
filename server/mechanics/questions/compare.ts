/** Room for the last bits of an arithmetic on decimal inches, far under any dial. */
const TOLERANCE = 1e-9;

/** True if the value is at or under the limit. */
export function within(value: number, limit: number): boolean {
  return Math.abs(value) <= limit + TOLERANCE;
}

/** True if the value is at one of the ends or between them. */
export function between(value: number, low: number, high: number): boolean {
  return value >= low - TOLERANCE && value <= high + TOLERANCE;
}

/** The middle one, or the mean of the two middle ones: one odd pass does not move it far. */
export function middle(values: readonly number[]): number | undefined {
  const sorted = [...values].sort((a, b) => a - b);
  const low = sorted[Math.floor((sorted.length - 1) / 2)];
  const high = sorted[Math.ceil((sorted.length - 1) / 2)];
  return low === undefined || high === undefined ? undefined : (low + high) / 2;
}

/** The target that the value comes nearest to. */
export function nearest(value: number, targets: readonly number[]): number | undefined {
  return targets.reduce<number | undefined>(
    (best, target) =>
      best === undefined || Math.abs(target - value) < Math.abs(best - value) ? target : best,
    undefined,
  );
}

export function spread(values: readonly number[]): number {
  return values.length === 0 ? 0 : Math.max(...values) - Math.min(...values);
}
