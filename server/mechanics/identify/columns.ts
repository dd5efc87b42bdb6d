import type { Account } from './accounts.ts';

/** Accounts that are alike in one kind of reading, so that one chance of an outcome serves them all. */
interface AlikeAccounts<Value> {
  readonly value: Value | undefined;
  /** Sum, sum of p log2 p, and largest of the probabilities of the families here. */
  families: number;
  familyLogs: number;
  familyMost: number;
  /** Share of none of these that has this value. */
  none: number;
}

export interface Worth {
  readonly bits: number;
  readonly rightFirst: number;
}

const xLog = (x: number): number => (x > 0 ? x * Math.log2(x) : 0);

/**
 * Accounts sorted by what they are made like in one kind of reading; the first has no known value. A relative
 * counts with its value in the chance that it is the same, and with the unknown otherwise.
 */
export function alike<Value>(
  accounts: readonly Account[],
  p: Float64Array,
  none: number,
  valueIn: (account: Account) => Value | undefined,
): AlikeAccounts<Value>[] {
  const empty = (value: Value | undefined): AlikeAccounts<Value> => ({
    value,
    families: 0,
    familyLogs: 0,
    familyMost: 0,
    none: 0,
  });
  const unknown = empty(undefined);
  const columns = new Map<Value | undefined, AlikeAccounts<Value>>([[undefined, unknown]]);
  accounts.forEach((account, index) => {
    const value = valueIn(account);
    const chance = p[index] ?? 0;
    const column = columns.get(value) ?? empty(value);
    columns.set(value, column);
    if (account.of === none) {
      column.none += account.same * chance;
      unknown.none += (1 - account.same) * chance;
      return;
    }
    column.families += chance;
    column.familyLogs += xLog(chance);
    column.familyMost = Math.max(column.familyMost, chance);
  });
  return [...columns.values()];
}

/**
 * What one outcome of a measurement adds to its worth.
 *
 * Equation: bits = sum_c q_c log2 q_c - q log2 q, right first = max_c q_c, with q_c = p_c f(outcome | c) and q
 * their sum. Families of one column share f, so that sum over them of xlog(p f) = f sum xlog(p) + xlog(f) sum p.
 *
 * @param columns [1] as from `alike`
 * @param chances [1 or 1/in] chance or density of the outcome, one per column
 * @returns bits and rightFirst, both to be summed or integrated over the outcomes
 * Validity: chances not negative.
 * Source: derived here.
 */
export function worthOfOutcome<Value>(
  columns: readonly AlikeAccounts<Value>[],
  chances: ArrayLike<number>,
): Worth {
  let none = 0;
  let all = 0;
  let bits = 0;
  let most = 0;
  for (const [index, column] of columns.entries()) {
    const f = chances[index] ?? 0;
    if (f === 0) continue;
    none += column.none * f;
    all += (column.families + column.none) * f;
    bits += column.familyLogs * f + xLog(f) * column.families;
    most = Math.max(most, column.familyMost * f);
  }
  return { bits: bits + xLog(none) - xLog(all), rightFirst: Math.max(most, none) };
}
