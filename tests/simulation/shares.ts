import type { Judged } from './hear.ts';

/** A share of calls with how many it is of. */
export interface Share {
  readonly share: number;
  readonly of: number;
}

export function shareOf<T>(rows: readonly T[], test: (row: T) => boolean): Share {
  return { share: rows.filter(test).length / rows.length, of: rows.length };
}

export const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** How often it is right among those that say so much. */
function saidBetween(rows: readonly Judged[], low: number, high: number) {
  const among = rows.filter(({ said }) => said >= low && said < high);
  return { said: meanOf(among.map(({ said }) => said)), right: shareOf(among, ({ right }) => right) };
}

/** The columns of the design note's tables. */
export interface Scored {
  readonly nameRight: Share;
  readonly ratioHeld: Share;
  readonly halfWidth: number;
  readonly near: Share;
  readonly said70: { readonly said: number; readonly right: Share };
  readonly said90: { readonly said: number; readonly right: Share };
  readonly settled: Share;
  readonly settledRight: Share;
  /** Words of the inference, and those that bands chose where it leaves it open. */
  readonly agreesTrue: Share;
  readonly differsTrue: Share;
  readonly agreesByBand: Share;
  readonly differsByBand: Share;
  readonly wordWithheld: Share;
}

export function scored(rows: readonly Judged[]): Scored {
  const told = (word: Judged['word'], byBand: boolean) =>
    rows.filter((row) => row.word === word && row.byBand === byBand);
  return {
    nameRight: shareOf(rows, ({ right }) => right),
    ratioHeld: shareOf(rows, ({ held }) => held),
    halfWidth: meanOf(rows.map(({ half }) => half)),
    near: shareOf(rows, ({ near }) => near),
    said70: saidBetween(rows, 0.7, 0.9),
    said90: saidBetween(rows, 0.9, 2),
    settled: shareOf(rows, ({ settled }) => settled),
    settledRight: shareOf(
      rows.filter(({ settled }) => settled),
      ({ right }) => right,
    ),
    agreesTrue: shareOf(told('agrees', false), ({ withinMark }) => withinMark),
    differsTrue: shareOf(told('differs', false), ({ withinMark }) => !withinMark),
    agreesByBand: shareOf(told('agrees', true), ({ withinMark }) => withinMark),
    differsByBand: shareOf(told('differs', true), ({ withinMark }) => !withinMark),
    wordWithheld: shareOf(rows, ({ word }) => word === undefined),
  };
}
