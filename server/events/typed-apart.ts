/** A few minutes go by between a press and its answer on a weak line; only more than that is worth saying. */
const FEW_MINUTES_MS = 5 * 60_000;

/** When it was typed, where that is worth saying beside when it arrived. */
export function typedApart({
  at,
  typedAt,
}: {
  readonly at: Date;
  readonly typedAt?: Date | undefined;
}): Date | undefined {
  if (typedAt === undefined) return undefined;
  return Math.abs(at.getTime() - typedAt.getTime()) > FEW_MINUTES_MS ? typedAt : undefined;
}
