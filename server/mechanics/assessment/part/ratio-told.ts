import { onlyRatioIn, ratioNamedIn, ratiosIn } from '../common/stamp-read.ts';
import { oneNumberOf } from '../common/two-numbers.ts';
import type { Evidence } from '../evidence.ts';
import type { InHand } from './in-hand.ts';

/** The ratio that a stamp has; without its point it is told as it stands, and is not taken for one. */
export function ratioStamped(mark: string): number | undefined {
  const numbers = ratiosIn(mark);
  if (numbers.length === 0) return ratioNamedIn(mark);
  const only = onlyRatioIn(mark);
  return only?.dotted === true ? only.ratio : undefined;
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
  const typedAs = (kind: keyof typeof BY): string[] =>
    readings.filter((each) => each.kind === kind).map(({ typed }) => typed);
  const stamp = arm === undefined ? undefined : oneNumberOf(evidence, arm);
  const boxes = [...typedAs('box-label'), arm?.boxLabel ?? ''].flatMap((label) => ratioNamedIn(label) ?? []);
  const stamps = typedAs('ratio-stamp').flatMap((mark) => ratioStamped(mark) ?? []);
  const ofArm =
    stamp === undefined ? ratioStamped(arm?.ratioStamp ?? '') : stamp.dotted ? stamp.ratio : undefined;
  const told: ToldRatio[] = [
    ...boxes.map((ratio) => ({ ratio, by: BY['box-label'] })),
    ...[...stamps, ...(ofArm === undefined ? [] : [ofArm])].map((ratio) => ({
      ratio,
      by: BY['ratio-stamp'],
    })),
  ];
  const all = told.length > 0 || soldAs === undefined ? told : [{ ratio: soldAs, by: 'They are sold as' }];
  const byName = all.toSorted((a, b) => (a.by < b.by ? -1 : a.by > b.by ? 1 : a.ratio - b.ratio));
  return [...new Map(byName.map((each) => [`${each.by} ${each.ratio}`, each])).values()];
}
