/** Ratios that a rocker can have: a number beyond them is no ratio (common practice, no published source). */
const LEAST = 0.9;
const MOST = 2.5;

/** What looks like a ratio on an arm, word for word, and the ratio that it would be. */
export interface Stamp {
  readonly text: string;
  readonly ratio: number;
  /** "16" or "60" alone stays undecided until somebody says that it is the ratio. */
  readonly dotted: boolean;
}

export const isRatio = (value: number): boolean => value > LEAST && value < MOST;

/** `1.6` of "16", "160" and "60": the digits with the point put where a ratio has it. */
function withPoint(digits: string): number | undefined {
  const [first = '', rest = ''] = [digits.slice(0, 1), digits.slice(1)];
  const both = [Number(`${first}.${rest}`), Number(`1.${digits}`)];
  return both.find(isRatio);
}

/** What looks like a ratio in a mark. */
export function stampRead(text: string): Stamp | undefined {
  const mark = text.trim();
  if (/^\d[.,]\d{1,3}$/.test(mark)) {
    const ratio = Number(mark.replace(',', '.'));
    return isRatio(ratio) ? { text: mark, ratio, dotted: true } : undefined;
  }
  const ratio = /^\d{2,4}$/.test(mark) ? withPoint(mark) : undefined;
  return ratio === undefined ? undefined : { text: mark, ratio, dotted: false };
}
