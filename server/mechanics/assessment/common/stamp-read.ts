import { readNumber } from '../../../../shared/quantities/read-number.ts';

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

/** Whether a rocker can have that ratio. */
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

/**
 * What parts two numbers of one mark; a comma between two figures is a decimal comma, and a dash belongs to a part number,
 * but where either stands between two figures that have their point already.
 */
const BETWEEN = /\s*(?:[/;|&+]|,(?=\s)|(?<=\d[.,]\d{1,3})\s*[,–-](?=\s*\d[.,]\d)|\band\b|\bor\b)\s*|\s+/i;

/**
 * The numbers of a mark that could be a ratio, each ratio once: “16 / 1.5” has two, of which none is taken for it. All that
 * is made of a mark begins here.
 */
export function ratiosIn(mark: string): Stamp[] {
  const read = mark
    .trim()
    .split(BETWEEN)
    .flatMap((each) => stampRead(each) ?? []);
  return read.filter((each, at) => read.findIndex(({ ratio }) => ratio === each.ratio) === at);
}

/** Those that a label names among other words, each with its point: `rockers 1.6, set of 16` has 1.6 alone. */
function ratiosNamed(label: string): Stamp[] {
  const written = [...label.matchAll(/(?<![\d.,])(\d[.,]\d{1,3})(?![\d.,]*\d)/g)].flatMap(([each]) =>
    ratiosIn(each),
  );
  return written.filter((each, at) => written.findIndex(({ ratio }) => ratio === each.ratio) === at);
}

/** The one that a mark has; of two none is taken for it. */
export function onlyRatioIn(mark: string): Stamp | undefined {
  const [only, ...others] = ratiosIn(mark);
  return others.length === 0 ? only : undefined;
}

/** As many words as a ratio is said in: `one point six five`. */
const MOST_WORDS = 4;

function ratioSaidIn(text: string): number | undefined {
  const words = text.toLowerCase().match(/[a-z]+/g) ?? [];
  const runs = words.flatMap((_, at) =>
    Array.from({ length: MOST_WORDS - 1 }, (__, more) => words.slice(at, at + MOST_WORDS - more)),
  );
  for (const run of runs.filter((each) => each.length > 1)) {
    const read = readNumber(run.join(' '), { kind: 'ratio' });
    if (read.ok && isRatio(read.value)) return read.value;
  }
  return undefined;
}

/** The ratio that a label names, written with its point or said: `box says one six` is 1.6. */
export function ratioNamedIn(label: string): number | undefined {
  const [written, ...others] = ratiosNamed(label);
  // Of two that could be it none is taken for it.
  if (written !== undefined) return others.length > 0 ? undefined : written.ratio;
  return ratioSaidIn(label);
}
