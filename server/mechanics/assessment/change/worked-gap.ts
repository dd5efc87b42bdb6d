import type { ScanMoved } from '../../consequences/scan-gap.ts';
import type { KnownGap } from '../../consequences/types.ts';
import type { Subject } from '../assessment.ts';
import type { GapBounds } from '../common/gap-said.ts';
import type { WithheldRatio } from '../common/valve-ratio.ts';
import type { Evidence, GapName } from '../evidence.ts';
import type { JudgedGap } from '../gaps/gap.ts';
import { bendIn } from '../gaps/gap-bend.ts';
import type { GapCell } from '../sheet/rows/cells.ts';
import { asTold } from './as-told.ts';
import type { ChangeGap, ChangeRatio } from './detail.ts';
import type { GapCalculations } from './gap-calculations.ts';
import { type PushrodRead, readWith } from './pushrod-read-with.ts';
import { type Ends, spreadOf, type Variants } from './spread.ts';

/** What the gaps of one valve or side are asked with. */
export interface GapsAsked {
  readonly evidence: Evidence;
  readonly calculations: GapCalculations;
  readonly about: Subject;
  /** Ends the ids, where there are several plans. */
  readonly planKey: string;
  readonly after?: ChangeRatio;
  /** An arm of that ratio was read on a light spring already, on whatever valve. */
  readonly isFirstRead: boolean;
  /** Of others, so that the first of these is a new one. */
  readonly isOtherRead: boolean;
  /** By how much a running-spring ratio was raised, as lift [m]; 0 for a light one. */
  readonly bend: number;
  /** Gaps read with these arms, as the sheet judged them. */
  readonly measured: readonly GapCell[];
  /** Gaps that the sheet tells, with whatever arms they were read. */
  readonly told: ReadonlySet<string>;
  /** Gaps read with the arms before. */
  readonly before: readonly JudgedGap[];
  /** Of what ratio those were nobody said. */
  readonly unsaid: boolean;
  /** A reading of these arms that the ratio after does not hold, though nothing is calculated with it yet. */
  readonly denied?: WithheldRatio;
  /** What the gap would be with the ratio as it was read. */
  readonly asRead?: (name: GapName) => GapBounds | undefined;
  /** With which arms pushrod to head was read. */
  readonly pushrod: PushrodRead;
  /** Where the scan that was read with the arms before has its least with the ratio after. */
  readonly moved?: ScanMoved;
}

/** Where a gap stands in for all of it: its value, else the end that is known. */
const placeOf = ({ value, low, high }: GapBounds): number | undefined => value ?? low ?? high;

/**
 * The low end with the lash taken up that was in the scan it is from, and with what the train bends on a running spring:
 * once, and not as one doubt among others.
 */
export function atLeast<Given extends GapBounds>(
  name: GapName,
  gap: Given,
  { before, evidence }: GapsAsked,
): Given {
  const entry = before.find((each) => each.entry.kind === name)?.entry;
  if (entry === undefined || gap.low === undefined) return gap;
  const less = (entry.scan?.lash ?? 0) + bendIn(entry, evidence);
  return less === 0 ? gap : { ...gap, low: gap.low - less };
}

/** What a gap is with each end of the ratios; the one before counts only where the gap is calculated from it. */
function endsOf(name: GapName, variants: Variants, { before, calculations }: GapsAsked): Ends {
  const at = (input: Variants['middle']) => placeOf(calculations.after(input, name) ?? {});
  const fromBefore = name === 'pushrod-to-head' || before.some(({ entry }) => entry.kind === name);
  return { before: fromBefore ? variants.before.map(at) : [], after: variants.after.map(at) };
}

/** The gap after with the ends of both ratios in its interval. */
function withEnds(middle: KnownGap, ends: Ends): GapBounds {
  const at = placeOf(middle);
  if (at === undefined) return middle;
  const { value, low, high } = middle;
  const under = low === undefined || value === undefined ? 0 : value - low;
  const over = high === undefined || value === undefined ? 0 : high - value;
  const spread = spreadOf(at, ends, { under, over });
  if (value !== undefined) return { value, low: value - spread.under, high: value + spread.over };
  return {
    ...(low === undefined ? {} : { low: low - spread.under }),
    ...(high === undefined ? {} : { high: high + spread.over }),
  };
}

/** What comes out with the arms before, with both ends of their ratio in it. */
export const workedBefore = (
  name: GapName,
  middle: KnownGap,
  { beforeEnds }: Pick<Variants, 'beforeEnds'>,
  { calculations }: Pick<GapsAsked, 'calculations'>,
): GapBounds =>
  withEnds(middle, {
    before: beforeEnds.map((input) => placeOf(calculations.before(input, name) ?? {})),
    after: [],
  });

/** What a gap comes out at. */
function workedOut(name: GapName, variants: Variants, asked: GapsAsked): GapBounds | undefined {
  const middle = asked.calculations.after(variants.middle, name);
  return middle && asTold(atLeast(name, withEnds(middle, endsOf(name, variants, asked)), asked));
}

/** It was taken once, and other arms than those that are on may have been on: it waits for a word on that. */
export const isEither = (name: GapName, { pushrod, before }: GapsAsked): boolean =>
  name === 'pushrod-to-head' &&
  pushrod.perhaps !== undefined &&
  !before.some(({ entry }) => entry.kind === name);

/** The same for whichever arms it may have been read with: the interval holds both. */
export function workedGap(name: GapName, variants: Variants, asked: GapsAsked): GapBounds | undefined {
  const one = workedOut(name, variants, asked);
  const { perhaps } = asked.pushrod;
  if (one === undefined || perhaps === undefined || !isEither(name, asked)) return one;
  const two = workedOut(name, readWith(variants, perhaps), asked);
  if (two?.low === undefined || two.high === undefined) return one;
  return {
    ...one,
    low: Math.min(one.low ?? two.low, two.low),
    high: Math.max(one.high ?? two.high, two.high),
  };
}

/**
 * What was read with other arms, beside what comes out with those from figures alone: they speak of one gap. Of pushrod to
 * head that figure is a reading itself.
 */
export function readThenOf(
  name: GapName,
  { beforeAlone, beforeEnds }: Variants,
  { before, calculations }: GapsAsked,
): ChangeGap['readThen'] {
  const judged = before.find(({ entry }) => entry.kind === name);
  if (judged === undefined || name === 'pushrod-to-head') return undefined;
  const alone = ({ scanBefore: _, ...input }: Variants['middle']): Variants['middle'] => ({
    ...input,
    readBefore: {},
  });
  const middle = calculations.before(alone(beforeAlone), name);
  if (middle === undefined) return undefined;
  const worked = workedBefore(name, middle, { beforeEnds: beforeEnds.map(alone) }, { calculations });
  return { entryId: judged.entry.id, gap: judged.gap, worked: asTold(worked) };
}
