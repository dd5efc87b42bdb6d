/*
 * One of several alike things, offered by its place among them: `gap-1`, `mark-2`. Their order must not change with what
 * is entered later.
 */

/** The code of the answer that picks one of a list. */
export const pickOf = (prefix: string, at: number): string => `${prefix}-${at + 1}`;

/** The one that was picked; nothing where another answer was given, or none. */
export const picked = <Each>(
  prefix: string,
  list: readonly Each[],
  chosen: string | undefined,
): Each | undefined => list.find((_, at) => chosen === pickOf(prefix, at));
