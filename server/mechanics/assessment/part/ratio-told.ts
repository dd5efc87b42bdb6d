import { readNumber } from '../../../../shared/quantities/read-number.ts';
import type { Evidence } from '../evidence.ts';
import { isRatio } from '../ratio/stamp-read.ts';
import { oneNumberOf } from '../ratio/two-numbers.ts';
import type { InHand } from './in-hand.ts';

/** As many words as a ratio is said in: `one point six five`. */
const MOST_WORDS = 4;

/** The ratio that a label or a stamp names, written with its point or said: `box says one six` is 1.6. */
export function ratioNamedIn(text: string): number | undefined {
  const written = [...text.matchAll(/(?<![\d.,])(\d[.,]\d{1,3})(?![\d.,]*\d)/g)].map(([each]) =>
    Number(each.replace(',', '.')),
  );
  if (written.length > 0) {
    const [value, ...others] = new Set(written.filter(isRatio));
    // Of two that could be it none is taken for it.
    return others.length > 0 ? undefined : value;
  }
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

export interface ToldRatio {
  readonly ratio: number;
  /** `the box says 1.6`, without the figure: `the box says` */
  readonly by: string;
}

const BY = {
  'box-label': 'The box says',
  'ratio-stamp': 'The stamp says',
} as const;

/** What is said of its ratio, by its box and its stamp, else by what the rockers are sold as; each figure once. */
export function ratiosTold(evidence: Evidence, { readings, armId }: InHand): ToldRatio[] {
  const {
    arms,
    rockers: { soldAs },
  } = evidence;
  const arm = arms.find(({ id }) => id === armId);
  const texts = (kind: keyof typeof BY, own: string | undefined): ToldRatio[] =>
    [...readings.filter((each) => each.kind === kind).map(({ typed }) => typed), own ?? ''].flatMap(
      (text) => {
        const ratio = ratioNamedIn(text);
        return ratio === undefined ? [] : [{ ratio, by: BY[kind] }];
      },
    );
  const stamp = arm === undefined ? undefined : oneNumberOf(evidence, arm)?.text;
  const told = [...texts('box-label', arm?.boxLabel), ...texts('ratio-stamp', stamp ?? arm?.ratioStamp)];
  const all = told.length > 0 || soldAs === undefined ? told : [{ ratio: soldAs, by: 'They are sold as' }];
  const byName = all.toSorted((a, b) => (a.by < b.by ? -1 : a.by > b.by ? 1 : a.ratio - b.ratio));
  return [...new Map(byName.map((each) => [`${each.by} ${each.ratio}`, each])).values()];
}
